/** The programs and models this trial needs: found, installed where that is possible, or named in a sentence. */
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot, run } from '../lib/run.mjs';

const MODELS = '/usr/share/pocketsphinx/model/en-us';

export const PACKAGES = [
  'espeak-ng',
  'flite',
  'sox',
  'gcc',
  'libc6-dev',
  'pkg-config',
  'libpocketsphinx-dev',
  'pocketsphinx-en-us',
] as const;

export interface Tools {
  readonly folder: string;
  readonly program: string;
  readonly model: string;
  readonly dictionary: string;
  readonly phoneModel: string;
}
export type Found = { readonly ok: true; readonly tools: Tools } | { readonly ok: false; readonly why: string };

/** What each package is there for, as something that can be asked for. */
const PROBES: Readonly<Record<string, () => Promise<boolean>>> = {
  'espeak-ng': () => answers('espeak-ng', '--version'),
  flite: () => answers('flite', '-lv'),
  sox: () => answers('sox', '--version'),
  gcc: () => answers('gcc', '--version'),
  'pkg-config': () => answers('pkg-config', '--version'),
  'libpocketsphinx-dev': () => answers('pkg-config', '--exists', 'pocketsphinx'),
  'pocketsphinx-en-us': () => Promise.resolve(existsSync(join(MODELS, 'cmudict-en-us.dict'))),
};

const answers = async (program: string, ...args: string[]): Promise<boolean> => (await run(program, args)).code === 0;

async function missingPackages(): Promise<readonly string[]> {
  const found = await Promise.all(Object.entries(PROBES).map(async ([name, probe]) => [name, await probe()] as const));
  return found.filter(([, there]) => !there).map(([name]) => name);
}

/** Debian and its children, as root: there the package manager can be asked. */
function canAskApt(): boolean {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return false;
  return (
    existsSync('/etc/os-release') && /^ID(_LIKE)?=.*(debian|ubuntu)/m.test(readFileSync('/etc/os-release', 'utf8'))
  );
}

const HOW = `Install them and try again (Debian and Ubuntu: apt-get install ${PACKAGES.join(' ')}).`;

async function install(missing: readonly string[]): Promise<string | undefined> {
  if (!canAskApt()) return `These are missing: ${missing.join(', ')}. ${HOW}`;
  console.log(`Installing with apt-get, for they are missing: ${missing.join(', ')} …`);
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  const updated = await run('apt-get', ['update', '-q'], { env });
  const installed = await run('apt-get', ['install', '-y', '-q', '--no-install-recommends', ...PACKAGES], { env });
  const still = await missingPackages();
  if (installed.code === 0 && still.length === 0) return undefined;
  const said = `${updated.output}\n${installed.output}`.trim().split('\n').slice(-8).join('\n');
  return `apt-get could not install ${still.join(', ') || 'everything'}:\n${said}\n${HOW}`;
}

/** Compiles the ear into `folder`; a sentence when the compiler refuses. */
async function compile(folder: string): Promise<string | undefined> {
  const flags = await run('pkg-config', ['--cflags', '--libs', 'pocketsphinx', 'sphinxbase']);
  const source = join(projectRoot, 'scripts', 'acoustic', 'ear.c');
  const words = flags.output.trim().split(/\s+/);
  const { code, output } = await run('gcc', ['-O2', '-Wall', '-Wextra', source, '-o', join(folder, 'ear'), ...words]);
  return code === 0 ? undefined : `the ear could not be compiled:\n${output.trim()}`;
}

/** Everything ready in `folder`, or a sentence that says what is not. */
export async function ensureTools(folder: string): Promise<Found> {
  const missing = await missingPackages();
  const refused = missing.length === 0 ? undefined : await install(missing);
  if (refused !== undefined) return { ok: false, why: refused };
  mkdirSync(folder, { recursive: true });
  const failed = await compile(folder);
  if (failed !== undefined) return { ok: false, why: failed };
  return {
    ok: true,
    tools: {
      folder,
      program: join(folder, 'ear'),
      model: join(MODELS, 'en-us'),
      dictionary: join(MODELS, 'cmudict-en-us.dict'),
      phoneModel: join(MODELS, 'en-us-phone.lm.bin'),
    },
  };
}
