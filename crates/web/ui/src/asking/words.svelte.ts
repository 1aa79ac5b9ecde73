/** The page's words, in the language of the shop. */
import type { Words } from '../answers';

let kept = $state.raw<Words | null>(null);

/** Puts the words in place, and tells the browser which language they are in. */
export function learn(words: Words): void {
  kept = words;
  document.documentElement.lang = words.language;
}

/** The words of an id; the id itself where there are none, so that it can be looked for. */
export function word(id: string): string {
  return kept?.words[id] ?? id;
}

/** Alloys of the table, by name and as they are shown. */
export function alloys(): [string, string][] {
  return kept?.alloys ?? [];
}

/** Code of their language. */
export function language(): string {
  return kept?.language ?? 'en';
}

/** Version of the program. */
export function version(): string {
  return kept?.version ?? '';
}
