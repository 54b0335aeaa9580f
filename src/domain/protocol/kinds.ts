/** Kinds of material the visits ask for by their class, in words. A practice's own material belongs to one of them. */
export const MATERIAL_KINDS: readonly { readonly id: string; readonly label: string }[] = [
  { id: 'alginate', label: 'Alginate' },
  { id: 'alginate-stiff', label: 'Alginate, reduced water' },
  { id: 'silicone-putty', label: 'Silicone putty' },
  { id: 'addition-silicone', label: 'Addition silicone' },
  { id: 'zinc-oxide-eugenol', label: 'Zinc-oxide–eugenol paste' },
  { id: 'polyether', label: 'Polyether' },
  { id: 'border-compound', label: 'Border compound' },
  { id: 'record-silicone', label: 'Silicone for bite records' },
];

/** True for a class that some visit offers. */
export function isKind(id: string): boolean {
  return MATERIAL_KINDS.some((kind) => kind.id === id);
}

/** A class in words; one of the practice's own making stays as it is. */
export function kindLabel(id: string): string {
  return MATERIAL_KINDS.find((kind) => kind.id === id)?.label ?? id;
}
