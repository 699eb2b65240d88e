import { type Cell, playCell } from './isolation-cell.ts';

/** Plays the cells its parent sends, one at a time. */
process.on('message', (cell: Cell) => process.send?.(playCell(cell)));
