/** What came of taking a bringing-in back. */
export function backText(file: string, { back, stay }: { readonly back: number; readonly stay: number }): string {
  const records = back === 1 ? '1 record is as it was' : `${back.toLocaleString('en-GB')} records are as they were`;
  const stays = stay === 0 ? '' : ` ${stay.toLocaleString('en-GB')} ${stay === 1 ? 'stays' : 'stay'}: changed since.`;
  return `${file} is taken back: ${records}.${stays}`;
}
