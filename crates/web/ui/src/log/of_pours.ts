/** The log as it is sent, a pour at a time: each block belongs to the pour before it. */
import type { BlockAnswer } from '../answers';

export interface PourBlocks {
  pour: BlockAnswer;
  /** Its mould and its heat. */
  around: BlockAnswer[];
  castings: BlockAnswer[];
}

/** The pours, in the order in which they are sent. */
export function ofPours(blocks: BlockAnswer[]): PourBlocks[] {
  const pours: PourBlocks[] = [];
  for (const block of blocks) {
    const last = pours.at(-1);
    if (block.id.startsWith('pour-')) pours.push({ pour: block, around: [], castings: [] });
    else if (block.id.startsWith('casting-')) last?.castings.push(block);
    else last?.around.push(block);
  }
  return pours;
}

/** The id of the entry that a block is of. */
export function entryOf(block: BlockAnswer): string {
  return block.id.slice(block.id.indexOf('-') + 1);
}
