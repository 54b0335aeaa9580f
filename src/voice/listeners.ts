/** A set of listeners that may come and go while it is being called. */
export class Listeners<T> {
  readonly #all = new Set<(value: T) => void>();

  add(listener: (value: T) => void): () => void {
    this.#all.add(listener);
    return () => this.#all.delete(listener);
  }

  tell(value: T): void {
    for (const listener of Array.from(this.#all)) if (this.#all.has(listener)) listener(value);
  }

  clear(): void {
    this.#all.clear();
  }
}
