import fc from 'fast-check';

// Property tests draw the same cases on every machine; BLOOMRAIL_SEED=7 npx vitest run … looks elsewhere.
fc.configureGlobal({ seed: Number(process.env.BLOOMRAIL_SEED ?? 2026) });
