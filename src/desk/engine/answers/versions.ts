import { dealStations } from '../../../estimate/gang/deal-stations.ts';
import { gangVersions } from '../../../pipeline/gang/versions.ts';
import { readVersionsJob } from '../../../pipeline/gang/versions-job.ts';
import type { VersionsAnswer, VersionsAsk } from '../protocol.ts';

/** The best plan for versions on the stations of one layout, each station told what it prints. */
export function shareOut(ask: VersionsAsk): VersionsAnswer {
  const { forms, lowerBound, stations = ask.stations } = gangVersions(readVersionsJob(ask, 'versions'));
  return { forms: dealStations(forms.map(({ counts }) => counts), stations), lowerBound };
}
