/** Form of the ridges at four sites, bone lost from the lower jaw, angle of the soft palate. */
import { badAmount, badSize, badWithin } from './check.ts';
import { known, refuse, type Measured } from './result.ts';

export type RidgeForm = 'I' | 'II' | 'III' | 'IV' | 'V' | 'VI';
export type RidgeSite = 'upperFront' | 'upperRear' | 'lowerFront' | 'lowerRear';

export const RIDGE_FORMS: Readonly<Record<RidgeForm, string>> = {
  I: 'with teeth',
  II: 'just after extraction',
  III: 'rounded, high and wide enough',
  IV: 'knife-edge, high enough, too narrow',
  V: 'flat, too low and too narrow',
  VI: 'depressed, some basal bone lost',
};

export const RIDGE_SITES: readonly RidgeSite[] = ['upperFront', 'upperRear', 'lowerFront', 'lowerRear'];

export interface RidgeLook {
  readonly shape: 'rounded' | 'sharp' | 'flat' | 'concave';
  /** High enough to hold a denture; where it was judged. */
  readonly high?: boolean;
  readonly wide?: boolean;
}

const LOOKS: Readonly<Record<RidgeLook['shape'], { form: RidgeForm; high: boolean; wide: boolean }>> = {
  rounded: { form: 'III', high: true, wide: true },
  sharp: { form: 'IV', high: true, wide: false },
  flat: { form: 'V', high: false, wide: false },
  concave: { form: 'VI', high: false, wide: false },
};

/**
 * Ridge form from what is seen and felt at one site without teeth. Refuses a look whose height or width contradicts its
 * shape (`inconsistent`) and unknown shapes. Source: ridge-forms.
 */
export function ridgeForm({ shape, high, wide }: RidgeLook): Measured<RidgeForm> {
  const look = Object.hasOwn(LOOKS, shape) ? LOOKS[shape] : undefined;
  if (look === undefined)
    return refuse('unknown', `“${shape}” is no ridge shape; known: ${Object.keys(LOOKS).join(', ')}.`);
  const clash = (high !== undefined && high !== look.high) || (wide !== undefined && wide !== look.wide);
  if (clash)
    return refuse('inconsistent', `A ${shape} ridge is form ${look.form}: ${RIDGE_FORMS[look.form]}. Look again.`);
  return known({ value: look.form, inputs: [shape], source: 'ridge-forms' });
}

export interface RidgeRecord {
  readonly sites: Readonly<Partial<Record<RidgeSite, RidgeForm>>>;
  readonly missing: readonly RidgeSite[];
}

/**
 * The four site values kept apart: form can differ between front and rear and between the jaws, so they are never
 * merged into one. Refuses unknown sites and forms and an empty record. Source: ridge-forms.
 */
export function ridgeRecord(sites: Readonly<Partial<Record<RidgeSite, RidgeForm>>>): Measured<RidgeRecord> {
  const entries = Object.entries(sites);
  if (entries.length === 0) return refuse('empty', 'No site was judged.');
  for (const [site, form] of entries) {
    if (!RIDGE_SITES.includes(site as RidgeSite))
      return refuse('unknown', `“${site}” is no site; known: ${RIDGE_SITES.join(', ')}.`);
    if (!Object.hasOwn(RIDGE_FORMS, form))
      return refuse('unknown', `“${form}” is no form; known: ${Object.keys(RIDGE_FORMS).join(', ')}.`);
  }
  const missing = RIDGE_SITES.filter((site) => sites[site] === undefined);
  return known({
    value: { sites, missing },
    inputs: entries.map(([site, form]) => `${site} ${form}`),
    source: 'ridge-forms',
  });
}

export interface BoneLoss {
  readonly originalMm: number;
  readonly lostMm: number;
  readonly lostShare: number;
  /** I up to a third lost, II up to two thirds, III beyond. */
  readonly class: 'I' | 'II' | 'III';
  readonly factor: number;
}

/**
 * Bone lost from the lower jaw at the mental foramen: original height = factor × (lower border to lower edge of the
 * foramen). Published factors are 3 and 2.9; the factor stays visible because it decides near the limits. Millimetres.
 * Refuses what is no height, and a present height above the original one (`inconsistent`). Source: bone-loss.
 */
export function boneLoss({
  foramenMm,
  presentMm,
  factor = 3,
}: {
  foramenMm: number;
  presentMm: number;
  factor?: number;
}): Measured<BoneLoss> {
  const bad =
    badSize(foramenMm, 'Lower border to foramen') ??
    badAmount(presentMm, 'Present height') ??
    badWithin(factor, 'Factor', [1, 5]);
  if (bad !== undefined) return bad;
  const originalMm = foramenMm * factor;
  const lostMm = originalMm - presentMm;
  if (lostMm < 0)
    return refuse('inconsistent', `Present height ${presentMm} mm is above the estimated original ${originalMm} mm.`);
  const lostShare = lostMm / originalMm;
  const near = (limit: number) => lostShare <= limit + 1e-9;
  const value = {
    originalMm,
    lostMm,
    lostShare,
    class: near(1 / 3) ? 'I' : near(2 / 3) ? 'II' : 'III',
    factor,
  } as const;
  return known({
    value,
    inputs: [`foramen ${foramenMm} mm`, `present ${presentMm} mm`, `factor ${factor}`],
    source: 'bone-loss',
  });
}

/** Height lost at a steady yearly rate: arithmetic only, loss slows with the years. Millimetres. Source: steady-loss. */
export function steadyLoss(mmPerYear: number, years: number): Measured<number> {
  const bad = badAmount(mmPerYear, 'Loss per year') ?? badAmount(years, 'Years');
  if (bad !== undefined) return bad;
  return known({
    value: mmPerYear * years,
    inputs: [`${mmPerYear} mm a year`, `${years} years`],
    source: 'steady-loss',
  });
}

export interface PalatalForm {
  readonly form: 'I' | 'II' | 'III';
  /** Usable width of the rear seal, millimetres, from memory; open ends are null. */
  readonly sealWidthMm: readonly [number | null, number | null];
}

/** Form of the soft palate by its angle to the hard palate: under 10° I, 10 to 45° II, over 45° III. Source: palatal-form. */
export function palatalForm(angleDeg: number): Measured<PalatalForm> {
  const bad = badWithin(angleDeg, 'Angle of the soft palate', [0, 90]);
  if (bad !== undefined) return bad;
  const form = angleDeg < 10 ? 'I' : angleDeg <= 45 ? 'II' : 'III';
  const widths = { I: [5, null], II: [3, 5], III: [null, 3] } as const;
  return known({ value: { form, sealWidthMm: widths[form] }, inputs: [`${angleDeg}°`], source: 'palatal-form' });
}
