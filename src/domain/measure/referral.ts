/**
 * When a finding in the mouth is to be referred or looked at again. Durations only; never says what a finding is, and
 * never that it is harmless. Texts can be replaced by the practice; local rules and the clinician decide.
 */
import { badAmount } from './check.ts';
import { known, refuse, type Measured } from './result.ts';

export type FindingKind = 'ulcer' | 'redPatch' | 'redWhitePatch' | 'mouthLump' | 'neckLump' | 'numbness' | 'other';

export interface Finding {
  readonly kind: FindingKind;
  /** How long it has been there, days. */
  readonly days?: number;
  /** A likely cause was found and removed, e.g. a flange eased. */
  readonly causeRemoved?: boolean;
  /** Days since the cause was removed. */
  readonly daysSinceRemoved?: number;
}

export type ReferralAction = 'refer' | 'review' | 'decide';

export interface Referral {
  readonly action: ReferralAction;
  /** Look again within these days; only with "review". */
  readonly reviewWithinDays?: number;
  readonly text: string;
}

export type ReferralTexts = Readonly<Record<ReferralAction, string>>;

/** Replaceable by the practice's own words. */
export const REFERRAL_TEXTS: ReferralTexts = {
  refer: 'Refer by the local rules, suspected-cancer rules included; do not wait for a review.',
  review: 'Look again within two weeks. Still there: refer by the local rules.',
  decide: 'The clinician decides now: refer, or record why and when it is looked at again.',
};

/** An ulcer older than this without an explanation is referred. Source: referral-duration. */
const ULCER_DAYS = 21;
/** An ulcer should have gone this long after its cause was removed (from memory). */
const HEALED_DAYS = 14;

const AT_ONCE: readonly FindingKind[] = ['redPatch', 'redWhitePatch', 'mouthLump', 'neckLump', 'numbness'];

function ulcerAction({ days, causeRemoved, daysSinceRemoved }: Finding): ReferralAction {
  if (daysSinceRemoved !== undefined && daysSinceRemoved > HEALED_DAYS) return 'refer';
  if (days === undefined) return 'decide';
  if (days > ULCER_DAYS) return 'refer';
  return causeRemoved === true ? 'review' : 'decide';
}

function actionOf(finding: Finding): ReferralAction {
  if (AT_ONCE.includes(finding.kind)) return 'refer';
  return finding.kind === 'ulcer' ? ulcerAction(finding) : 'decide';
}

const KINDS: readonly FindingKind[] = [...AT_ONCE, 'ulcer', 'other'];

/**
 * What the duration rules ask for. Red or red-and-white patches, lumps and new numbness: refer whatever their age. Ulcers:
 * over 21 days, or still there 14 days after the cause was removed, refer; otherwise review or decide. There is no answer
 * that lets a finding pass. Days; refuses an unknown kind and what is no duration. Source: referral-duration.
 */
export function referral(finding: Finding, texts: Partial<ReferralTexts> = {}): Measured<Referral> {
  if (!KINDS.includes(finding.kind))
    return refuse('unknown', `“${finding.kind}” is no kind of finding; known: ${KINDS.join(', ')}.`);
  const { days, daysSinceRemoved } = finding;
  const bad =
    (days === undefined ? undefined : badAmount(days, 'Days')) ??
    (daysSinceRemoved === undefined ? undefined : badAmount(daysSinceRemoved, 'Days since the cause was removed'));
  if (bad !== undefined) return bad;
  const action = actionOf(finding);
  const text = texts[action] ?? REFERRAL_TEXTS[action];
  const limit = action === 'review' ? { reviewWithinDays: HEALED_DAYS } : {};
  const inputs = [finding.kind, ...(days === undefined ? ['duration not known'] : [`${days} days`])];
  return known({ value: { action, ...limit, text }, inputs, source: 'referral-duration' });
}
