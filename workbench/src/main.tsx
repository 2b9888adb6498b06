import '@fontsource/b612/400.css';
import '@fontsource/b612/700.css';
import './ink/tokens.css';
import './ink/lines.css';
import './page/page.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createBench } from './page/bench.ts';
import { BenchContext } from './page/bench-context.ts';
import { keepMoves, keptMoves } from './page/kept-moves.ts';
import { NoPlan } from './page/NoPlan.tsx';
import { Page } from './page/Page.tsx';
import { applyLooks } from './page/ThemeChoice.tsx';
import { workerComputer } from './page/worker-computer.ts';

applyLooks();
const root = createRoot(document.getElementById('root') as HTMLElement);

async function start(): Promise<void> {
  const answer = await fetch('/plan.json');
  if (!answer.ok) return root.render(<NoPlan reason={await answer.text()} />);
  const served = await answer.text();
  const bench = createBench(workerComputer());
  bench.getState().open(JSON.parse(served), keptMoves(served));
  bench.subscribe(({ history }, before) => history === before.history || keepMoves(served, history));
  root.render(
    <StrictMode>
      <BenchContext value={bench}>
        <Page />
      </BenchContext>
    </StrictMode>,
  );
}

start().catch((reason: unknown) => root.render(<NoPlan reason={String(reason)} />));
