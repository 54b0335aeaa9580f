/** Version written into every fact; kept equal to package.json by test/app/version.test.ts. */
export const appVersion = '0.1.0';
