/** The size of a part in words. */

/** Three extents in mm, in the numbers of a language; more than two places help nobody here. */
export function sizeText(extents: readonly number[], language: string): string {
  const whole = new Intl.NumberFormat(language, { maximumFractionDigits: 0 });
  const small = new Intl.NumberFormat(language, { maximumSignificantDigits: 2 });
  const one = (mm: number) => (mm >= 20 ? whole : small).format(mm);
  return `${extents.map(one).join(' × ')} mm`;
}
