/** Starts the app: devices, runtime, screens. Nothing is created inside a component. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from '../screens/App.tsx';
import { browserDevices } from './browser-devices.ts';
import { useAppModel } from './hooks.ts';
import { createRuntime } from './runtime.ts';
import type { Runtime } from './runtime.types.ts';

function boot(): Runtime {
  const late: { runtime?: Runtime } = {};
  const devices = browserDevices({
    onRing: (id, ring) => late.runtime?.ring(id, ring),
    mayLeaveDevice: () => late.runtime?.mayLeaveDevice() ?? false,
    language: 'en',
  });
  const runtime = createRuntime(devices);
  late.runtime = runtime;
  void runtime.start();
  return runtime;
}

const runtime = boot();

/** Any touch or key arms the sound: after a reload the browser keeps it shut until a person has done something. */
function armByGesture(): void {
  runtime.touched();
  if (runtime.model.getState().sound !== 'armed') runtime.armSound();
}
window.addEventListener('pointerdown', armByGesture, { capture: true });
window.addEventListener('keydown', armByGesture, { capture: true });

function Root() {
  return <App model={useAppModel(runtime)} actions={runtime} />;
}

const place = document.getElementById('root');
if (place !== null) {
  createRoot(place).render(
    <StrictMode>
      <Root />
    </StrictMode>,
  );
}
