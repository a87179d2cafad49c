/** Whether each wall's caption stands beside it on the stage; where there is no room, the column lists the walls. */
import { Store } from '../selection.ts';

export const wallsCaptioned = new Store(false);
