/** Whether the reader wants no motion: then nothing plays, and the drive is stepped. */
const wish = matchMedia('(prefers-reduced-motion: reduce)');
let still = $state(wish.matches);
wish.addEventListener('change', (e) => (still = e.matches));

export const isStill = (): boolean => still;
