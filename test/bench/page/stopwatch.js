// Runs inside the page, before its own scripts: notes when things are on the screen, in ms since the page was asked for.
const watched = { tasks: [] };
window.stopwatch = watched;

const state = () => document.querySelector('.state')?.textContent ?? '';
const force = () =>
  [...document.querySelectorAll('.measures tr')]
    .find((row) => row.textContent.startsWith('Force, horizontal rolls'))
    ?.querySelector('.value')?.textContent;

/** Notes the time of the next picture, once. */
const painted = (name) => {
  if (name in watched) return;
  watched[name] = undefined;
  const { move } = watched;
  const note = () => {
    if (watched.move !== move) return;
    watched[name] = performance.now();
    look();
  };
  requestAnimationFrame(() => setTimeout(note));
};

const look = () => {
  if (document.querySelector('.stops svg clipPath')) painted('firstStation');
  if (state().startsWith('Full result')) painted('firstLine');
  const { move } = watched;
  if (!move) return;
  if (force() !== move.force) painted('answer');
  if (watched.answer !== undefined && state().startsWith('Full result')) painted('line');
};

new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });

new PerformanceObserver((list) => {
  for (const { startTime, duration } of list.getEntries()) watched.tasks.push({ startTime, duration });
}).observe({ type: 'longtask', buffered: true });

addEventListener(
  'keydown',
  ({ timeStamp }) => {
    delete watched.answer;
    delete watched.line;
    watched.move = { at: timeStamp, force: force() };
  },
  { capture: true },
);
