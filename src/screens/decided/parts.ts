/** What is fetched when a visit is opened, for the first screen does not need it: sheets, surfaces, sizes and their tables. */
export { SoreMap } from '../drawings/SoreMap.tsx';
export { ToothSizes } from '../drawings/ToothSizes.tsx';
export { Tracing } from '../drawings/Tracing.tsx';
export { Hold, ReviewDays, SoreAreas, TracingsAndTeeth } from '../summary/decided.tsx';
export { SoreBody } from '../visit/SoreBody.tsx';
export { TracingBody } from '../visit/TracingBody.tsx';
