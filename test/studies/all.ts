// `npm run study`: every slow study, one after another; each writes its table beside itself.
await import('./cooling-and-straightening.ts');
await import('./line-speed.ts');
await import('./damaged-plans.ts');
await import('./metal-flow/verification.ts');
await import('./metal-flow/robustness.ts');
await import('./metal-flow/rolls-true.ts');

export {};
