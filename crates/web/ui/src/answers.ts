/** What the server sends and takes, under the names that it has there. */

/** What stands behind a key of a job's file; nothing where it is left to the program. */
export type Typed = string | boolean | number | string[] | null;

/** Words of the page, by their ids. */
export interface Words {
  /** Code of the language. */
  language: string;
  words: Record<string, string>;
  /** Alloys of the table, by name and as they are shown. */
  alloys: [string, string][];
  /** Version of the program. */
  version: string;
}

/** A job of the list. */
export interface ListedJob {
  /** The way to its folder, by which it is asked for. */
  job: string;
  name: string;
  /** None where its file cannot be read. */
  alloy: string | null;
}

/** Where a new job lies. */
export interface MadeJob {
  job: string;
}

/** Everything on a sheet, in the words of the shop. */
export interface SheetAnswer {
  job: string;
  name: string;
  language: string;
  /** Short code of this very plan; none while the mesh has to be settled. */
  code: string | null;
  red_lines: string[];
  /** Reasons not to pour it as it stands. */
  stops: string[];
  head: TypedLine[];
  /** The sheet in the order of the day. */
  blocks: BlockAnswer[];
  /** Every remark, the weightiest first. */
  remarks: RemarkAnswer[];
  /** What the sheet cannot promise. */
  limits: string;
  unsettled: Unsettled | null;
}

/** One part of the day. */
export interface BlockAnswer {
  id: string;
  heading: string;
  rows: RowAnswer[];
  /** What is typed for it and is no row of its own. */
  typed: TypedLine[];
}

/** A figure or a choice. */
export interface RowAnswer {
  name: string;
  value: string;
  band: string | null;
  /** In the other system of units. */
  other: string | null;
  note: string | null;
  /** Whether it is read with something in the hands. */
  large: boolean;
  /** Its name as it may be asked why. */
  figure: string | null;
  /** What is typed to set it by hand. */
  typed: TypedLine | null;
}

/** What is typed for a key. */
export type Kind = 'text' | 'count' | 'yes' | 'one-of' | 'place' | 'places';

/** One of a few words: as the file has it, and as it is shown. */
export interface OneChoice {
  value: string;
  shown: string;
}

/** What stands in the job's file. */
export interface TypedLine {
  key: string;
  label: string;
  value: Typed;
  kind: Kind;
  /** What it may be, where it is one of a few. */
  choices: OneChoice[];
  example: string | null;
  /** What is taken where nothing stands there; none where it is worked out or does not count. */
  otherwise: string | null;
}

/** A remark. */
export interface RemarkAnswer {
  level: 'stop' | 'caution' | 'note';
  /** The weight in a word of the shop's language. */
  weight: string;
  /** The block that it stands beside. */
  block: string;
  words: string;
  advice: string;
}

/** A mesh that has to be settled. */
export interface Unsettled {
  remarks: RemarkAnswer[];
  units: UnitChoice[];
}

/** A unit and the size that the part has in it. */
export interface UnitChoice {
  unit: string;
  extents_mm: [number, number, number];
}

/** A change of one key. */
export interface Change {
  key: string;
  /** What stood there when it was looked at. */
  was: Typed;
  /** What is to stand there. */
  to: Typed;
}

/** Everything behind a figure. */
export interface WhyAnswer {
  label: string;
  value: string;
  band: string | null;
  because: string | null;
  formula: string;
  with_numbers: string;
  /** What went in: key, what it is, figure. */
  given: [string, string, string][];
  range: string;
  narrowing: string[];
  mind: string[];
  sources: string[];
}

/** Plan and section of the mould, flat. */
export interface DrawingAnswer {
  svg: string;
  caption: string;
  scale: string;
  /** Why the mould could not be built of solids, where it could not. */
  unbuilt: string | null;
}

/** A no. */
export interface No {
  message: string;
  hint?: string;
  /** Where two changes met: what stands in the file now. */
  now?: Typed;
}
