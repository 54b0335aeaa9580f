import { rankTrays, trayBorder, traySpacer, widthFromPadCentres } from '../../../src/domain/measure/trays.ts';
import type { Tray } from '../../../src/domain/protocol/types.ts';
import { h, of, rows, type Row, type Table } from '../check.ts';

const SET: readonly Tray[] = [60, 66, 72, 78].map((mm) => ({
  id: `${mm}`,
  label: `Upper ${mm}`,
  arch: 'upper',
  innerWidth: h(mm),
}));
const exactly = (mm: number): readonly Tray[] => [
  { id: `${mm}`, label: `Upper ${mm}`, arch: 'upper', innerWidth: h(mm) },
];
const first = (ridge: number, clearance: number) => of(rankTrays(SET, h(ridge), h(clearance)))[0]!;
const spare = (tray: number, ridge: number, clearance: number) =>
  of(rankTrays(exactly(tray), h(ridge), h(clearance)))[0]!.spareMm;
const border = (flange: number) => of(trayBorder(1200, h(flange)));

const trayRows: readonly Row[] = [
  ...rows('tray-size', 'derived', [
    ['ridge 58, clearance 5: a tray of 68 fits with nothing to spare', 0, () => spare(68, 58, 5)],
    ['ridge 62, clearance 5: 72', 0, () => spare(72, 62, 5)],
    ['ridge 66, clearance 4: 74', 0, () => spare(74, 66, 4)],
    ['set 60 66 72 78, ridge 58, clearance 5', '72', () => first(58, 5).tray.id],
    ['same set, ridge 62, clearance 5', '72', () => first(62, 5).tray.id],
    ['same set, ridge 66, clearance 4', '78', () => first(66, 4).tray.id],
  ]),
  ...rows('tray-size', 'our choice', [
    ['4 mm wider than needed: no building up', 'fits', () => first(58, 5).fit],
    ['more than 4 mm wider: build up', 'buildUp', () => first(57.9, 5).fit],
  ]),
  ...rows('tray-size', 'text seen', [
    ['half a pad of 7.94 mm on each side of centres 52', 59.94, () => of(widthFromPadCentres(5200)) / 100],
  ]),
];

const borderRows = rows('tray-border', 'derived', [
  ['sulcus 12, flange 10: short by', 2, () => border(10).shortMm],
  ['verdict', 'right', () => border(10).verdict],
  ['flange 11.5: short by', 0.5, () => border(11.5).shortMm],
  ['verdict ', 'trim', () => border(11.5).verdict],
  ['flange 8: short by', 4, () => border(8).shortMm],
  ['verdict  ', 'add', () => border(8).verdict],
]);

const span = (material: string) => of(traySpacer(material)).join(' to ');
const spacerRows: readonly Row[] = [
  ...rows('tray-spacer', 'text seen', [['alginate, two sheets of wax', '3 to 3', () => span('alginate')]]),
  ...rows('tray-spacer', 'from memory', [
    ['zinc oxide–eugenol', '0 to 0.5', () => span('zinc-oxide-eugenol')],
    ['addition silicone', '1.5 to 2', () => span('addition-silicone')],
    ['light silicone', '1 to 1', () => span('light-silicone')],
    ['condensation silicone', '1.5 to 2', () => span('condensation-silicone')],
    ['polyether', '2 to 3', () => span('polyether')],
    ['plaster', '2 to 3', () => span('plaster')],
  ]),
];

export const trayTables: readonly Table[] = [
  { title: 'Stock trays', rows: trayRows },
  { title: 'Border of the custom tray', rows: borderRows.map((row) => ({ ...row, what: row.what.trim() })) },
  { title: 'Spacer', rows: spacerRows },
];
