/** What a class has, as it is typed; what is left empty is not sent. */
export interface Class {
  pupils: number | null;
  sessions: number | null;
  minutes: number | null;
  adults: number | null;
  flasks: number | null;
}

/** A class as it is asked for in an address. */
export function classGiven(given: Class): string {
  const typed = Object.entries(given).filter(([, number]) => typeof number === 'number');
  return new URLSearchParams(typed.map(([key, number]) => [key, String(number)])).toString();
}
