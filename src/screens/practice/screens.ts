/** What is fetched together. */
export { PracticeScreen } from './PracticeScreen.tsx';
export { ProtocolScreen } from './ProtocolScreen.tsx';
