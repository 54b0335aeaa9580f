declare module '@lhncbc/ucum-lhc' {
  interface Units {
    validateUnitString(code: string): { readonly status: 'valid' | 'invalid' | 'error' };
  }
  const library: { readonly UcumLhcUtils: { getInstance(): Units } };
  export default library;
}
