/** What is fetched together: everything about the passphrase that is seen. */
export { LockScreen } from './LockScreen.tsx';
export { LockSettings } from './LockSettings.tsx';
export { RecoverySheet } from './RecoverySheet.tsx';
