/** What else is to be heard in the room, as commands for sox. Nothing here is random between two runs (sox -R). */

export const NOISES = ['pink', 'suction', 'babble'] as const;
export type Noise = (typeof NOISES)[number];

/** Short sounds of a body and of a tray of instruments; for the trials with nobody speaking. */
export const BURSTS = ['cough', 'clatter'] as const;
export type Burst = (typeof BURSTS)[number];

const RAW = ['-R', '-n', '-r', '16000', '-b', '16', '-c', '1'];

/** Air drawn through a narrow tip: hiss with two whistling bands, gurgling, over a motor's hum. */
const SUCTION = (
  'synth 30 whitenoise lowpass 5500 highpass 80 bass -6 equalizer 118 20q 24 equalizer 1250 1.5q 9 ' +
  'equalizer 2600 5q 12 tremolo 5.3 45 gain -n -3'
).split(' ');
const PINK = 'synth 30 pinknoise gain -n -3'.split(' ');
const COUGH =
  'synth 0.22 brownnoise highpass 180 equalizer 900 1q 10 fade l 0.01 0.22 0.16 pad 0.3 0.15 repeat 1 gain -n -3'.split(
    ' ',
  );
const CLATTER =
  'synth 0.12 sine 3150 sine mix 4730 sine mix 6210 fade l 0.001 0.12 0.11 pad 0.25 0.1 repeat 2 gain -n -3'.split(' ');

const RECIPES: Readonly<Record<Exclude<Noise, 'babble'> | Burst, readonly string[]>> = {
  pink: PINK,
  suction: SUCTION,
  cough: COUGH,
  clatter: CLATTER,
};

/** The command that writes a noise to `path`. Babble is made of voices elsewhere. */
export function noiseCommand(noise: Exclude<Noise, 'babble'> | Burst, path: string): readonly string[] {
  return ['sox', ...RAW, path, ...RECIPES[noise]];
}
