/** The practice's own screens are fetched when they are first wanted: nothing of them is needed at the chair. */
import { useEffect, useState } from 'react';
import type { AppActions, AppModel } from '../../app/model.ts';
import type * as practiceScreens from './screens.ts';

type Screens = typeof practiceScreens;

let fetched: Screens | undefined;

/** Fetches them; at once when they are there. */
export async function fetchPractice(): Promise<Screens> {
  fetched ??= await import('./screens.ts');
  return fetched;
}

interface PlaceProps {
  readonly model: AppModel;
  readonly actions: AppActions;
}

export function PracticePlace({ model, actions }: PlaceProps) {
  const [screens, setScreens] = useState(fetched);
  useEffect(() => {
    if (screens === undefined) void fetchPractice().then(setScreens);
  }, [screens]);
  if (screens === undefined) {
    return (
      <main className="page">
        <h1>The practice</h1>
        <p role="status">Being read …</p>
      </main>
    );
  }
  const { PracticeScreen, ProtocolScreen } = screens;
  return model.place === 'practice' ? (
    <PracticeScreen model={model} actions={actions} />
  ) : (
    <ProtocolScreen model={model} actions={actions} />
  );
}
