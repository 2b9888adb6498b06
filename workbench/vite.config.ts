import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// vite reads its configuration from a default export.
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  plugins: [react()],
  worker: { format: 'es' },
  build: { target: 'es2023', outDir: 'dist', emptyOutDir: true, chunkSizeWarningLimit: 900 },
});
