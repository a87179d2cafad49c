/** What the keyboard does on the stage, as the help card lists it. */
export const KEYS: readonly { readonly keys: string; readonly what: string }[] = [
  {
    keys: 'Arrows',
    what: 'move what is selected by 1 cm, as the screen shows it; with nothing selected, move the view',
  },
  { keys: 'Shift + arrows', what: 'move it by 10 cm' },
  { keys: ',  .', what: 'turn it by 1° against or with the clock' },
  { keys: 'Shift + ,  .', what: 'turn it by 15°' },
  { keys: 'Enter', what: 'go to the first field of its card' },
  { keys: 'N', what: 'neighbours make room for what is moved, or stay where they are; pinned ones always stay' },
  { keys: 'Delete', what: 'put it back to the unplaced' },
  { keys: 'Escape', what: 'return a drag, or let go of what is selected' },
  { keys: '+  −', what: 'nearer, farther' },
  { keys: '0', what: 'the whole of it' },
  { keys: 'Page up, Page down', what: 'move the view up or down by most of its height' },
  {
    keys: 'W',
    what: 'point: others see where your pointer is; then arrows move it by 10 cm, Escape or W puts it away',
  },
  { keys: 'Shift + press', what: 'select one more; from bare ground, draw a frame round many' },
  { keys: 'Press twice', what: 'select the whole vignette' },
  { keys: 'Alt + drag', what: 'drag without settling on whole centimetres or the centre line' },
];

/** Told to the window when a person asks for the card's first field. */
export const OPEN_CARD = 'enfilade:open-card';
