/** A place on a fitting surface, named by touching it on the drawing. The same answers can be said, or pressed by number. */
import { lookFirst } from '../../domain/protocol/sore-causes.ts';
import type { Jaw, SoreArea } from '../../domain/summary/decided.types.ts';
import { choicesOf, type Choice } from '../choices.ts';
import { Surface } from '../drawings/SoreMap.tsx';
import { placeOf, SURFACE, type At } from '../drawings/surfaces.ts';
import { Target } from '../parts/Target.tsx';
import { StepLines, type BodyProps } from './body.tsx';

const regionOf = (choice: Choice) => choice.intent.replace(/^answer:/, '');

interface Placed {
  readonly choice: Choice;
  readonly region: string;
  readonly number: number;
  readonly at: At | undefined;
}

const share = (value: number, whole: number) => `${((value / whole) * 100).toFixed(2)}%`;

interface RegionProps {
  readonly placed: Placed;
  readonly said: readonly SoreArea[];
  readonly chosen: boolean;
  readonly onPress: () => void;
}

/** "named today", "named at visit 4" — in words for whoever does not see the rings. */
function saidWords(said: readonly SoreArea[]): string {
  const visits = [...new Set(said.map((area) => (area.current ? 'today' : `at ${area.visit}`)))];
  return visits.length === 0 ? '' : `, named ${visits.join(' and ')}`;
}

function Region({ placed: { choice, number }, said, chosen, onPress }: RegionProps) {
  const now = said.some((area) => area.current);
  const ring = now ? 'region-now' : said.length > 0 ? 'region-earlier' : '';
  return (
    <span className={`region ${ring}`}>
      <Target onPress={onPress} chosen={chosen} name={`${number}, ${choice.label}${saidWords(said)}`}>
        {number}
      </Target>
    </span>
  );
}

interface Look {
  readonly words: string;
  readonly status: string;
  readonly numbers: readonly number[];
}

/** Regions with the same first look share a line. */
function looks(all: readonly Placed[]): readonly Look[] {
  const found = new Map<string, Look>();
  for (const { region, number } of all) {
    const look = lookFirst(region);
    if (look === undefined) continue;
    const key = `${look.at}|${look.status}`;
    const numbers = [...(found.get(key)?.numbers ?? []), number];
    found.set(key, { words: `look at ${look.at} first`, status: look.status, numbers });
  }
  return [...found.values()];
}

function Legend({ all }: { readonly all: readonly Placed[] }) {
  return (
    <>
      <ul className="region-list" aria-label="Regions">
        {all.map(({ choice, region, number }) => (
          <li key={region}>
            <strong>{number}</strong> {choice.label}
          </li>
        ))}
      </ul>
      <ul className="region-looks" aria-label="Where to look first">
        {looks(all).map(({ words, status, numbers }) => (
          <li key={words}>
            <strong>{numbers.join(', ')}</strong>: {words} <span className="figure-status">({status})</span>
          </li>
        ))}
      </ul>
    </>
  );
}

/** Where the middle is too low for the drawing its targets stand in a plain list, in the same order. */
function PlainList({ all, answered, onPress }: PlainProps) {
  return (
    <div className="choices choices-many sore-list" role="group" aria-label="Answers">
      {all.map(({ choice, region }, i) => (
        <Target
          key={region}
          size="big"
          {...(i < 9 ? { digit: i + 1 } : {})}
          chosen={answered === region}
          onPress={() => onPress(choice.intent)}
        >
          {choice.label}
        </Target>
      ))}
    </div>
  );
}

interface PlainProps {
  readonly all: readonly Placed[];
  readonly answered: string | undefined;
  readonly onPress: (intent: string) => void;
}

export function SoreBody({ model, step, actions }: BodyProps) {
  const jaw: Jaw = step.drawing === 'sore-upper' ? 'upper' : 'lower';
  const all = choicesOf(step).map((choice, i): Placed => {
    const region = regionOf(choice);
    return { choice, region, number: i + 1, at: placeOf(jaw, region) };
  });
  const areas = (model.summary?.sore ?? []).filter((area) => area.jaw === jaw);
  const target = (placed: Placed) => (
    <Region
      placed={placed}
      said={areas.filter((area) => area.region === placed.region)}
      chosen={step.answered === placed.region}
      onPress={() => actions.press(placed.choice.intent)}
    />
  );
  const off = all.filter(({ at }) => at === undefined);
  return (
    <div className="body sore-body">
      <PlainList all={all} answered={step.answered} onPress={actions.press} />
      <div className="sore-map" role="group" aria-label={`Fitting surface, ${jaw}`}>
        <svg viewBox={`0 0 ${SURFACE.width} ${SURFACE.height}`} aria-hidden="true">
          <Surface jaw={jaw} />
        </svg>
        {all.map((placed) =>
          placed.at === undefined ? null : (
            <div
              key={placed.region}
              className="region-at"
              style={{ left: share(placed.at.x, SURFACE.width), top: share(placed.at.y, SURFACE.height) }}
            >
              {target(placed)}
            </div>
          ),
        )}
      </div>
      <div className="sore-side">
        <StepLines step={step} />
        {off.map((placed) => (
          <div key={placed.region}>{target(placed)}</div>
        ))}
        <Legend all={all} />
      </div>
    </div>
  );
}
