/** House rules for what a date text leaves open; guides disagree, so each is a setting. */

/** First and last year counted from the beginning of a hundred or of ten. */
export type Stretch = readonly [from: number, to: number];

export interface DateRules {
  /** `c. 1880` is this many years to either side (CCO 2006, 4.2.3: `ca. 1610` is 1605–1615). A range is taken as given. */
  readonly circaYears: number;
  /** `early`, `mid` and `late` in a century. Common practice: thirds; other guides take quarters or halves. */
  readonly century: { readonly early: Stretch; readonly mid: Stretch; readonly late: Stretch };
  readonly decade: { readonly early: Stretch; readonly mid: Stretch; readonly late: Stretch };
  /** `3/4/1912` is 4 March or 3 April; null: both are kept, and it is told. */
  readonly figures: 'month first' | 'day first' | null;
}

export const HOUSE_DATES: DateRules = {
  circaYears: 5,
  century: { early: [0, 33], mid: [34, 66], late: [67, 99] },
  decade: { early: [0, 3], mid: [4, 6], late: [7, 9] },
  figures: null,
};
