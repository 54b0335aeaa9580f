/** Where no passphrase is set nothing of the lock is needed: it is fetched when it is first wanted. */
import { lazy, Suspense, type ComponentProps } from 'react';
import type * as lockScreens from './screens.ts';

type Screens = typeof lockScreens;

const fetched = () => import('./screens.ts');
const Screen = lazy(async () => ({ default: (await fetched()).LockScreen }));
const Settings = lazy(async () => ({ default: (await fetched()).LockSettings }));
const Sheet = lazy(async () => ({ default: (await fetched()).RecoverySheet }));

function Empty({ title }: { readonly title: string }) {
  return (
    <main className="page lock">
      <h1>{title}</h1>
    </main>
  );
}

export function LockScreen(props: ComponentProps<Screens['LockScreen']>) {
  return (
    <Suspense fallback={<Empty title="Locked" />}>
      <Screen {...props} />
    </Suspense>
  );
}

export function RecoverySheet(props: ComponentProps<Screens['RecoverySheet']>) {
  return (
    <Suspense fallback={<Empty title="Recovery sheet" />}>
      <Sheet {...props} />
    </Suspense>
  );
}

export function LockSettings(props: ComponentProps<Screens['LockSettings']>) {
  return (
    <Suspense fallback={null}>
      <Settings {...props} />
    </Suspense>
  );
}
