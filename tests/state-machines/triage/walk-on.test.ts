import { describe } from 'vitest';
import { walkFrom } from './walks.ts';

// The other half of the walks in walk.test.ts.
describe('whoever does blindly what the plan offers, elsewhere', () => walkFrom(2011));
