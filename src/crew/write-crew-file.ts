/** The file that the phone gives back: what was set, when, how long it took, checks and notes. */
import { CREW_FORMAT, CREW_VERSION, type CrewFile } from '../exchange/crew-file-model';
import { withInches } from './words';
import { roundStakes, type Job } from './job';
import { entryOf, type RoundLog } from './log';

/** JSON; stakes with nothing to tell are left out. `now` in milliseconds of the clock. */
export function writeCrewFile(job: Job, logOf: (round: number) => RoundLog, now: number): string {
  const file: CrewFile = {
    format: CREW_FORMAT,
    version: CREW_VERSION,
    plan: job.plan,
    job: job.source.name,
    saved_at: new Date(now).toISOString(),
    rounds: job.rounds.map(({ round }) => ({
      round,
      started_at: timeText(logOf(round).startedAt),
      move_seconds: logOf(round).moveSeconds,
    })),
    stakes: job.rounds.flatMap(({ round }) => roundEntries(job, round, logOf(round))),
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

function roundEntries(job: Job, round: number, log: RoundLog): CrewFile['stakes'] {
  return roundStakes(job, round).flatMap(({ stake, list }) => {
    const { at, seconds, readFt, note } = entryOf(log, stake.id);
    if (at === null && readFt === null && note === '') return [];
    return [
      {
        stake: stake.id,
        kind: stake.kind,
        round,
        set_at: timeText(at),
        seconds: at === null ? null : seconds,
        check_from: stake.check.from,
        check_ft: readFt,
        check_text: readFt === null ? '' : withInches(readFt, list.system),
        note,
      },
    ];
  });
}

const timeText = (at: number | null): string | null =>
  at === null ? null : new Date(at).toISOString();
