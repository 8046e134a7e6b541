/** How a tank is built, in what a rule can require of it. */
export const CONSTRUCTIONS = [
  'liquid-depth',
  'freeboard',
  'wall',
  'invert-drop',
  'inlet-below',
  'outlet-below',
  'outlet-share',
  'outlet-above',
] as const
export type Construction = (typeof CONSTRUCTIONS)[number]
