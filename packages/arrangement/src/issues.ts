/** What is wrong with something a person asked for: where, what, and the value as it stood. */
export interface Issue {
  readonly where: string;
  readonly what: string;
  readonly value: string | number;
}
