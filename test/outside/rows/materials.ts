import { dentureSoak, disinfectionCheck, labRelease } from '../../../src/domain/measure/disinfection.ts';
import {
  mixPlan,
  mixRatio,
  ratioCheck,
  roomSetting,
  studySlopes,
  TEMPERATURE_STUDIES,
  temperatureCheck,
} from '../../../src/domain/measure/mixing.ts';
import {
  ALGINATE_LIMITS,
  changeOverSpan,
  ELASTOMERS,
  elastomerCheck,
  lastingDent,
  type ElastomerType,
  type TestReport,
} from '../../../src/domain/measure/standards.ts';
import { materialPhases, pourState, pourWindow } from '../../../src/domain/measure/windows.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { of, refusalOf, rows, type Row, type Table } from '../check.ts';

const judged = (report: TestReport) => {
  const { pass, fails } = of(elastomerCheck(report));
  return pass ? 'pass' : `fail: ${fails.join(', ')}`;
};

const LIMITS: readonly (readonly [ElastomerType, number, string, number, string])[] = [
  ['putty', 0, ' to 35', 75, '0.8 to 20'],
  ['heavy', 1, ' to 35', 50, '0.8 to 20'],
  ['medium', 2, '31 to 41', 20, '2 to 20'],
  ['light', 3, '36 to ', 20, '2 to 20'],
];
const limitRows = LIMITS.flatMap(([type, number, disc, detail, strain]) =>
  rows('iso-4823', 'second-hand', [
    [`${type}: type number`, number, () => ELASTOMERS[type].type],
    [`${type}: consistency disc, mm`, disc.trim(), () => ELASTOMERS[type].discMm.join(' to ').trim()],
    [`${type}: detail, µm`, detail, () => ELASTOMERS[type].detailUm],
    [`${type}: strain in compression, per cent`, strain, () => ELASTOMERS[type].strainPercent.join(' to ')],
    [`${type}: recovery at least, per cent`, 96.5, () => ELASTOMERS[type].recoveryPercent],
    [`${type}: linear change at most, per cent`, 1.5, () => ELASTOMERS[type].changePercent],
  ]),
);

const standardRows: readonly Row[] = [
  ...limitRows,
  ...rows('iso-21563', 'second-hand', [
    ['alginate: detail, µm', 50, () => ALGINATE_LIMITS.detailUm],
    ['alginate: recovery at least, per cent', 95, () => ALGINATE_LIMITS.recoveryPercent],
    ['alginate: tear at least, N/mm', 0.38, () => ALGINATE_LIMITS.tearNPerMm],
  ]),
  ...rows('iso-4823', 'second-hand', [
    [
      'light: detail 20, recovery 97.0, strain 3.0, change 0.4',
      'pass',
      () => judged({ type: 'light', detailUm: 20, recoveryPercent: 97, strainPercent: 3, changePercent: 0.4 }),
    ],
    ['light: recovery 96.4', 'fail: elastic recovery', () => judged({ type: 'light', recoveryPercent: 96.4 })],
    ['heavy: strain 0.9', 'pass', () => judged({ type: 'heavy', strainPercent: 0.9 })],
    ['medium: strain 1.9', 'fail: strain in compression', () => judged({ type: 'medium', strainPercent: 1.9 })],
    ['linear change 1.6', 'fail: linear change', () => judged({ type: 'heavy', changePercent: 1.6 })],
  ]),
  ...rows('limit-size', 'derived', [
    ['1.5 % of 50 mm', '0.75', () => of(changeOverSpan(1.5, 50))],
    ['recovery 95 %, strain 20 %, 8 mm', '0.080', () => of(lastingDent(95, 20, 8))],
    ['recovery 96.5 %, strain 20 %, 8 mm', '0.056', () => of(lastingDent(96.5, 20, 8))],
  ]),
];

const LEAFLET = { powderG: 23, waterMl: 50 } as const;
const ratioRows: readonly Row[] = [
  ...rows('leaflet', 'text seen', [['23 g to 50 ml', '0.460', () => of(mixRatio(LEAFLET))]]),
  ...rows('leaflet', 'derived', [
    ['23 g to 45 ml', '0.511', () => of(mixRatio({ powderG: 23, waterMl: 45 }))],
    [
      '23 g to 45 ml: per cent over the leaflet',
      '11',
      () => 100 * of(ratioCheck({ powderG: 23, waterMl: 45 }, LEAFLET)).off,
    ],
    ['10 % less water for 23 g: millilitres', '45.0', () => of(mixPlan({ leaflet: LEAFLET, lessWater: 0.1 })).waterMl],
  ]),
  ...rows('ratio-limit', 'our choice', [
    ['11 % over is warned', 'true', () => of(ratioCheck({ powderG: 23, waterMl: 45 }, LEAFLET)).warn],
    ['4 % over is not', 'false', () => of(ratioCheck({ powderG: 24, waterMl: 50 }, LEAFLET)).warn],
  ]),
];

const slope = (id: string, part = 0) => studySlopes(TEMPERATURE_STUDIES.find((study) => study.id === id)!)[part];
const ROOM: readonly (readonly [number, string, string])[] = [
  [23, '131.1', '108.9'],
  [25, '120.1', '97.7'],
  [31, '87.1', '64.1'],
  [20, '147.6', '125.7'],
];
const temperatureRows: readonly Row[] = [
  ...ROOM.flatMap(([degrees, regular, fast]) =>
    rows('alginate-room-temperature', 'derived', [
      [`printed regression at ${degrees} °C, regular`, regular, () => of(roomSetting('regular', degrees))],
      [`printed regression at ${degrees} °C, fast`, fast, () => of(roomSetting('fast', degrees))],
    ]),
  ),
  ...rows('alginate-room-temperature', 'derived', [
    ['observed slope, regular, 23 to 31 °C', '−6.65', () => slope('room, regular')],
  ]),
  ...rows('alginate-water-temperature', 'derived', [['observed slope, 13 to 28 °C', '−2.16', () => slope('water')]]),
  ...rows('alginate-wide-temperature', 'derived', [
    ['observed slope, 7 to 19.5 °C', '−8.5', () => slope('wide')],
    ['observed slope, 19.5 to 45 °C', '−3.3', () => slope('wide', 1)],
  ]),
  ...rows('temperature-limit', 'derived', [
    ['5 °C colder: at least seconds', '11', () => of(temperatureCheck(16, 21)).shiftS[0]],
    ['5 °C colder: at most seconds', '43', () => of(temperatureCheck(16, 21)).shiftS[1]],
  ]),
  ...rows('temperature-limit', 'our choice', [
    ['3 °C warmer is warned', 'true', () => of(temperatureCheck(24, 21)).warn],
    ['2.9 °C warmer is not', 'false', () => of(temperatureCheck(23.9, 21)).warn],
  ]),
];

const MINUTE = 60_000;
const TEN = 10 * 60 * MINUTE;
const pour = (minutes: number, within = 30) =>
  of(pourState({ removedAt: TEN, now: TEN + minutes * MINUTE, pourFromMin: 0, pourWithinMin: within }));
const clock = (ms: number) => `${Math.floor(ms / (60 * MINUTE))}:${String((ms / MINUTE) % 60).padStart(2, '0')}`;
const pourRows: readonly Row[] = [
  ...rows('pour-windows', 'derived', [
    ['alginate out at 10:00, limit 30 min: due', '10:30', () => clock(pour(0).dueMs)],
    ['at 10:11, rinsed 1 min and disinfected 10: minutes left', 19, () => pour(11).leftMs / MINUTE],
    ['at 10:25', 'soon', () => pour(25).state],
    ['at 10:25: minutes left', 5, () => pour(25).leftMs / MINUTE],
    ['at 10:31', 'expired', () => pour(31).state],
    ['used 11 of 30: left', 19, () => pour(11).leftMs / MINUTE],
    ['extended-storage alginate, 48 h: due two days later at', '58:00', () => clock(pour(0, 48 * 60).dueMs)],
  ]),
  ...rows('pour-windows', 'text seen', [
    ['alginate: best within, minutes', 10, () => of(pourWindow('alginate')).bestWithinMin],
    ['alginate: usable within, minutes', 30, () => of(pourWindow('alginate')).withinMin],
    ['condensation silicone: within, minutes', 30, () => of(pourWindow('condensation-silicone')).withinMin],
  ]),
  ...rows('pour-windows', 'from memory', [
    ['addition silicone: within, days', 7, () => of(pourWindow('addition-silicone')).withinMin / 1440],
    ['polyether: within, days', 7, () => of(pourWindow('polyether')).withinMin / 1440],
  ]),
];

const phases = () => defaultPractice.materials.map((material) => ({ material, phases: of(materialPhases(material)) }));
const end = (id: string, list: ReturnType<typeof phases>[number]['phases']) => list.find((p) => p.id === id)!.endS;
const phaseRows: readonly Row[] = [
  ...rows('leaflet', 'common practice', [
    [
      'every material to start with: working time ends before removal',
      'true',
      () => phases().every(({ phases: p }) => end('working', p) < end('inMouth', p)),
    ],
    [
      'removal never before the leaflet’s time',
      'true',
      () => phases().every(({ material, phases: p }) => end('inMouth', p) === material.removeS),
    ],
    [
      'warned 15 s before working time ends',
      'true',
      () => phases().every(({ material, phases: p }) => p[1]!.warnS === material.workingS - 15),
    ],
    [
      'working time after removal is refused',
      'inconsistent',
      () => refusalOf(materialPhases({ ...defaultPractice.materials[0]!, removeS: 60 })),
    ],
  ]),
];

const check = (materialClass: string, agent: 'hypochlorite' | 'iodophor', minutes: number) =>
  of(disinfectionCheck({ materialClass, agent, minutes, labelMinutes: 10 })).verdict;
const disinfectionRows: readonly Row[] = [
  ...rows('disinfection', 'from memory', [
    ['alginate, hypochlorite, 10 min', 'fits', () => check('alginate', 'hypochlorite', 10)],
    ['alginate, hypochlorite, 12 min', 'tooLong', () => check('alginate', 'hypochlorite', 12)],
    ['zinc oxide–eugenol, hypochlorite', 'wrongAgent', () => check('zinc-oxide-eugenol', 'hypochlorite', 10)],
    ['zinc oxide–eugenol, iodophor', 'fits', () => check('zinc-oxide-eugenol', 'iodophor', 10)],
    ['less than the label', 'tooShort', () => check('alginate', 'iodophor', 8)],
  ]),
  ...rows('disinfection', 'our choice', [
    [
      'nothing on record: not to the lab',
      'agent,concentration,minutes,byWhom',
      () => of(labRelease({ agent: null })).missing.join(),
    ],
    [
      'all on record: to the lab',
      'true',
      () => of(labRelease({ agent: 'iodophor', concentration: '1:213', minutes: 10, byWhom: 'AB' })).release,
    ],
  ]),
  ...rows('denture-soak', 'second-hand', [
    ['soaked in hypochlorite 8 min: warned', 'false', () => of(dentureSoak('hypochlorite', 8)).warn],
    ['12 min: warned', 'true', () => of(dentureSoak('hypochlorite', 12)).warn],
    ['dry overnight: warned', 'true', () => of(dentureSoak('dry', 8 * 60)).warn],
  ]),
];

export const materialTables: readonly Table[] = [
  { title: 'Impression-material standards', rows: standardRows },
  { title: 'Powder and water', rows: ratioRows },
  { title: 'Temperature of alginate', rows: temperatureRows },
  { title: 'Time to pour', rows: pourRows },
  { title: 'Phases of a material', rows: phaseRows },
  { title: 'Disinfection and soaking', rows: disinfectionRows },
];
