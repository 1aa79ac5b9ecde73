/** The words of the bench card, in the language of the shop. */

let kept = $state.raw<Record<string, string>>({});

/** Puts the words in place, and tells the browser which language they are in. */
export function learn(words: Record<string, string>, language: string): void {
  kept = words;
  document.documentElement.lang = language;
}

/** The words of an id; the id itself where there are none, so that it can be looked for. */
export function word(id: string): string {
  return kept[id] ?? id;
}

/** The words of an id with numbers put in for `#1`, `#2`. */
export function wordWith(id: string, ...numbers: (string | number)[]): string {
  return numbers.reduce<string>((text, number, at) => text.replace(`#${at + 1}`, `${number}`), word(id));
}
