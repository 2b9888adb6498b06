import { readFileSync, writeFileSync } from 'node:fs';
