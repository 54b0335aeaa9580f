/** Kept so plain that an old Node can read it and say what is wrong instead of failing on syntax. */

/**
 * What is wrong with this Node, as a sentence; empty when it will do. The build tool needs 20.19 or, later, 22.12.
 * @param {string} version such as `20.19.3`, without a leading v
 * @returns {string}
 */
export function nodeTrouble(version) {
  const parts = version.split('.').map(Number);
  const major = parts[0] || 0;
  const minor = parts[1] || 0;
  const fits = major > 22 || (major === 22 && minor >= 12) || (major === 20 && minor >= 19);
  if (fits) return '';
  return 'Rimwise needs Node 20.19 or newer in the 20 line, or 22.12 or newer; this is Node ' + version + '.';
}

/** Ends the process with a plain sentence when Node is too old. */
export function requireNode() {
  const trouble = nodeTrouble(process.versions.node);
  if (trouble === '') return;
  console.error(trouble);
  process.exit(1);
}
