/** Path of the bundle made of `entry` in `folder`. */
export function bundleForNode(entry: string, folder: string): Promise<string>;
