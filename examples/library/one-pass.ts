// One pass alone, from a case file: forces of several laws side by side.
import { readFileSync } from 'node:fs';
import { readCase, runCase, writeRecord } from '@bloomrail/engine';

const content = JSON.parse(readFileSync(new URL('../one-station/box-pass.json', import.meta.url), 'utf8'));
const reading = readCase(content);
if (!reading.ok) throw new Error(reading.issues.map(({ message }) => message).join('\n'));

const result = runCase(reading.value);
if (!result.ok) throw new Error(result.failure.reason);
const record = writeRecord(result.value) as { forceLaws: { law: string; forceKn: number }[] };
for (const { law, forceKn } of record.forceLaws) console.log(`${law}: ${forceKn.toFixed(0)} kN`);
