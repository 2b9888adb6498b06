import { writeFileSync } from 'node:fs';
import type { Result } from '@bloomrail/engine/outcome/result';
import { fromDxf } from '@bloomrail/engine/section/dxf';
import type { Outline } from '@bloomrail/engine/section/outline';
import { Profile } from '@bloomrail/engine/section/profile/profile';
import { outlineOf, profileNamed, profileNames } from '@bloomrail/engine/section/profile-library';
import { outlineReport, SectionReport, sectionReport } from '@bloomrail/engine/section/section-report';
import { issuesOf } from '@bloomrail/engine/units/issue';
import { sectionDrawing } from '@bloomrail/sheets/section-drawing';
import { svgOf } from '@bloomrail/sheets/svg';
import { z } from 'zod';
import { type ExitCode, exitCode } from '../exit-code.ts';
import { noAnswer, type Output, refuseInput } from '../print/output.ts';
import { propertyNotes, sectionText } from '../print/section.ts';
import { type Reading, readJson, readText } from '../read-json.ts';

export interface SectionOptions {
  readonly json: boolean;
  /** File to draw the section into, SVG. */
  readonly drawing?: string | undefined;
}

/** `bloomrail section PROFILE`: a profile of the library, a file of dimensions, or a DXF outline. */
export function section(name: string, options: SectionOptions, output: Output): ExitCode {
  const found = find(name);
  if (!found.ok) return refuseInput(output, found.issues, options.json);
  const { outline, report } = found.value;
  if (!outline.ok) return noAnswer(output, outline.failure, options.json);
  if (!report.ok) return noAnswer(output, report.failure, options.json);
  output.out(
    options.json ? JSON.stringify(z.encode(SectionReport, report.value), null, 2) : sectionText(report.value),
  );
  if (options.drawing) {
    const drawing = sectionDrawing(report.value.profile, outline.value, propertyNotes(report.value));
    writeFileSync(options.drawing, svgOf(drawing));
    output.notice(`Drawn into ${options.drawing}.`);
  }
  return exitCode.computed;
}

interface Found {
  readonly outline: Result<Outline>;
  readonly report: Result<SectionReport>;
}

function find(name: string): Reading<Found> {
  if (/\.dxf$/i.test(name)) return drawn(name);
  if (/\.json$/i.test(name)) return ownDimensions(name);
  const profile = profileNamed(name);
  if (profile) return { ok: true, value: { outline: outlineOf(profile), report: sectionReport(profile) } };
  const limit = `one of ${profileNames.join(', ')}, or a *.json or *.dxf file`;
  return {
    ok: false,
    issues: [{ path: 'profile', value: name, limit, message: `profile is ${name}; allowed: ${limit}` }],
  };
}

function ownDimensions(file: string): Reading<Found> {
  const content = readJson(file);
  if (!content.ok) return content;
  const parsed = Profile.safeParse(content.value);
  if (!parsed.success) return { ok: false, issues: issuesOf(parsed.error, content.value) };
  return { ok: true, value: { outline: outlineOf(parsed.data), report: sectionReport(parsed.data) } };
}

function drawn(file: string): Reading<Found> {
  const text = readText(file);
  if (!text.ok) return text;
  const outline = fromDxf(text.value);
  if (outline.ok) return { ok: true, value: { outline, report: outlineReport(file, outline.value) } };
  const limit = 'one closed outline of lines and arcs';
  return {
    ok: false,
    issues: outline.failure.problems.map((message) => ({
      path: file,
      limit,
      message: `${file}: ${message}`,
    })),
  };
}
