/** A device that fails the same way every time is worth one sentence, not one for every number. */
export function onceEach(tell: (why: string) => void): (why: string) => void {
  const told = new Set<string>();
  return (why) => {
    if (told.has(why)) return;
    told.add(why);
    tell(why);
  };
}
