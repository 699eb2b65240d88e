import { describe } from 'vitest';
import { walkFrom } from './walks.ts';

// A thousand walks in all, in two files, so that two workers share them; the others are in walk-on.test.ts.
describe('whoever does blindly what the plan offers', () => walkFrom(11));
