/** How screens reach the runtime. */
import { useStore } from 'zustand';
import type { AppModel } from './model.ts';
import type { Runtime } from './runtime.types.ts';

/** The model, anew with every change and once a second. */
export function useAppModel(runtime: Runtime): AppModel {
  return useStore(runtime.model);
}
