/** Every screen in every state with invented numbers, for the eye: `preview.html?state=NAME`. Not part of the app. */
import { createRoot } from 'react-dom/client';
import { App } from '../App.tsx';
import { loggingActions } from './actions.ts';
import { states } from './states.ts';

function Index() {
  return (
    <main className="page">
      <h1>Screens in every state</h1>
      <ul>
        {Object.keys(states).map((name) => (
          <li key={name}>
            <a href={`?state=${name}`}>{name}</a>
          </li>
        ))}
      </ul>
    </main>
  );
}

const name = new URLSearchParams(window.location.search).get('state') ?? '';
const model = states[name];
const root = document.getElementById('root');
if (root !== null)
  createRoot(root).render(model === undefined ? <Index /> : <App model={model} actions={loggingActions} />);
