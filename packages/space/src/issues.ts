/** What is wrong with something a person typed or brought in: where, what, and the value as it stood. */
export interface Issue {
  readonly where: string;
  readonly what: string;
  readonly value: string | number;
}
