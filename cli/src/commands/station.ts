import { readCase, runCase } from '@bloomrail/engine/line/case';
import { writeRecord } from '@bloomrail/engine/line/records';
import { cautions } from '@bloomrail/sheets/cautions';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { findingsText } from '../print/findings.ts';
import { measuresTable } from '../print/measures.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { readJson } from '../read-json.ts';

export interface StationOptions {
  readonly json: boolean;
  readonly strict: boolean;
}

/** `bloomrail station NAME CASE` and `bloomrail pass CASE`: one station alone. */
export function station(name: string, file: string, options: StationOptions, output: Output): ExitCode {
  const content = readJson(file);
  if (!content.ok) return refuseInput(output, content.issues, options.json);
  const reading = readCase(content.value);
  if (!reading.ok) return refuseInput(output, reading.issues, options.json);
  if (reading.value.station !== name)
    return wrongStation(name, reading.value.station, file, output, options.json);
  const result = runCase(reading.value);
  if (!result.ok) return noAnswer(output, result.failure, options.json);
  const record = result.value;
  const visit = { code: '', title: name, group: 'heat', record } as const;
  output.out(
    options.json
      ? JSON.stringify(writeRecord(record), null, 2)
      : [measuresTable(record.measures), findingsText([visit]), cautions.join(' ')].join('\n\n'),
  );
  const stop = record.findings.some((finding) => finding.stop === true);
  return options.strict && stop ? exitCode.stopped : exitCode.computed;
}

function wrongStation(asked: string, found: string, file: string, output: Output, json: boolean): ExitCode {
  const message = `${file} is a case for ${found}; asked for ${asked}`;
  return refuseInput(output, [{ path: 'station', value: found, limit: asked, message }], json);
}
