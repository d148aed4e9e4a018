/** The seven stages of the job, in the order in which it is thought through. */
export const STAGES = ['ground', 'design', 'look', 'passes', 'stakes', 'hours', 'packet'] as const;
export type Stage = (typeof STAGES)[number];

export const STAGE_NAMES: Readonly<Record<Stage, string>> = {
  ground: 'Ground',
  design: 'Design',
  look: 'Look',
  passes: 'Passes',
  stakes: 'Stakes',
  hours: 'Hours',
  packet: 'Packet',
};
