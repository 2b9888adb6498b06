import { passModels } from '@bloomrail/engine/stations/stands/settings';
import { Command, Option } from '@commander-js/extra-typings';
import { check } from './commands/check.ts';
import { pass } from './commands/flow-pass.ts';
import { run } from './commands/run.ts';
import { section } from './commands/section.ts';
import { serve } from './commands/serve.ts';
import { squares } from './commands/squares.ts';
import { station } from './commands/station.ts';
import { exitCode } from './exit-code.ts';
import { processOutput } from './print/output.ts';

const program = new Command()
  .name('bloomrail')
  .description('Computes a rail mill’s line from bloom to bundle.')
  .showHelpAfterError()
  .exitOverride((stop) => process.exit(stop.exitCode === 0 ? exitCode.computed : exitCode.badInput));

const json = ['--json', 'documented keys with units, for programs'] as const;
const strict = ['--strict', 'end with 1 when a finding says the line must not be run'] as const;

program
  .command('run')
  .description('the whole line of a plan')
  .argument('<plan>', 'plan file, JSON')
  .option(...json)
  .option(...strict)
  .addOption(new Option('--model <model>', 'what computes the passes').choices(passModels))
  .action((file, options) => finish(run(file, { ...flags(options), model: options.model }, processOutput)));

program
  .command('section')
  .description(
    'a rail or crane rail section: a profile of the library, a file of dimensions, or a DXF outline',
  )
  .argument('<profile>', 'name (60E1), dimensions (*.json) or outline (*.dxf)')
  .option(...json)
  .option('--drawing <file>', 'draw it to scale into this SVG file')
  .action((name, options) =>
    finish(section(name, { ...flags(options), drawing: options.drawing }, processOutput)),
  );

program
  .command('station')
  .description('one station alone')
  .argument('<name>', 'furnace, descaler, pass, saws, cooling-bed, straighteners or yard')
  .argument('<case>', 'case file, JSON')
  .option(...json)
  .option(...strict)
  .action((name, file, options) => finish(station(name, file, flags(options), processOutput)));

program
  .command('pass')
  .description('one pass alone: by the handbook’s laws, or by the metal-flow model from a case of its own')
  .argument('<case>', 'case file, JSON')
  .addOption(new Option('--model <name>', 'what computes it').choices(passModels).default('handbook'))
  .option('--slices', 'metal flow: every section of the bite as well')
  .option('--drawing <file>', 'metal flow: draw the pass to scale into this SVG file')
  .option('--squares <file>', 'metal flow: draw squares on the bar, before and after, into this SVG file')
  .option('--square-side <mm>', 'side of those squares, mm', Number)
  .option('--lead <scale>', 'metal flow: roll a block of lead of this scale as well, 0.1 for 1 : 10', Number)
  .option(...json)
  .option(...strict)
  .action((file, { model, slices, drawing, squares, squareSide, lead, ...options }) =>
    finish(
      pass(
        file,
        { ...flags(options), model, slices: slices === true, drawing, squares, squareSide, lead },
        processOutput,
      ),
    ),
  );

program
  .command('squares')
  .description('squares drawn on the bloom and carried through all passes of a plan by metal flow')
  .argument('<plan>', 'plan file, JSON')
  .requiredOption('--out <folder>', 'folder for one drawing a pass, SVG')
  .option('--square-side <mm>', 'side of the squares, mm', Number, 25)
  .action((file, { out, squareSide }) => finish(squares(file, { out, side: squareSide }, processOutput)));

program
  .command('check')
  .description('whether a plan file is complete and inside its limits')
  .argument('<plan>', 'plan file, JSON')
  .option(...json)
  .action((file, options) => finish(check(file, flags(options), processOutput)));

program
  .command('serve')
  .description('the workbench in the browser')
  .argument('[plan]', 'plan file, JSON; the example when left out')
  .option('--port <number>', 'port on this machine', '4173')
  .action(async (file, options) => {
    const code = await serve(file, Number(options.port), processOutput);
    if (code !== exitCode.computed) finish(code);
  });

const flags = (options: { json?: true | undefined; strict?: true | undefined }) => ({
  json: options.json === true,
  strict: options.strict === true,
});

function finish(code: number): void {
  process.exitCode = code;
}

await program.parseAsync();
