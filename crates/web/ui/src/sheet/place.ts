/** Places on a sheet to which something leads: lines that are filled in. */
import type { LeadAnswer } from '../answers';
import { addressOf } from '../asking/way';

/** The id of a line on its page. */
export function idOf(key: string): string {
  return `typed-${key.replaceAll('.', '-')}`;
}

/** Where a line stands that an advice names. */
export function placeOf(lead: LeadAnswer, job: string): string {
  const sheets = { job: addressOf(job), sand: '/sand', shop: '/shop' };
  return `${sheets[lead.on]}#${idOf(lead.key)}`;
}

/** How long a line is waited for that its page has to ask for first, ms. */
const PATIENCE_MS = 5000;

/** Brings the cursor to a place of the page, once it is there. */
export function reach(id: string, until = Date.now() + PATIENCE_MS): void {
  const place = document.getElementById(id);
  if (place) {
    place.scrollIntoView({ block: 'center' });
    place.focus();
  } else if (Date.now() < until) {
    setTimeout(() => reach(id, until), 50);
  }
}
