import { config } from 'zod';

// The Content-Security-Policy forbids code made from text, which zod would otherwise try for speed.
config({ jitless: true });
