import type { MemberRole } from '../../shared/contract/primitives.ts';
import { message } from '../../shared/message/index.ts';
import { type Refused, refused } from './problem.ts';

const everyone = ['dispatcher', 'technician', 'support', 'admin'] as const;

/**
 * What each role may do: the one table that every route uses and `/reference` shows. Which role may send which
 * ticket command stands beside the triage machine (`commandRoles`), since the phone needs it too.
 */
export const access = {
  'own account': everyone,
  'follow changes': everyone,
  'read members': everyone,
  'manage members': ['admin'],
  'read organisation': everyone,
  'manage organisation': ['admin'],
  'export everything': ['admin'],
  'read firmware levels': everyone,
  'manage firmware levels': ['admin', 'support'],
  'read sites': everyone,
  'write sites': ['dispatcher', 'technician', 'admin'],
  'read chains': everyone,
  'write chains': ['dispatcher', 'technician', 'admin'],
  'read tickets': everyone,
  'open tickets': ['dispatcher', 'technician', 'admin'],
  'update tickets': ['dispatcher', 'technician', 'admin'],
  'assign tickets': ['dispatcher', 'admin'],
  'take over tickets': ['technician', 'admin'],
  'send ticket commands': everyone,
  'erase texts': ['admin'],
  'read evidence': everyone,
  'add evidence': everyone,
  'withdraw evidence': ['technician', 'dispatcher', 'admin'],
  'read packets': everyone,
  'grant packets': ['support', 'admin'],
  'read granted packets': ['support'],
  'read the support queue': ['support', 'admin'],
} as const satisfies Record<string, readonly MemberRole[]>;

export type Permission = keyof typeof access;

export function may(role: MemberRole, permission: Permission): boolean {
  return (access[permission] as readonly MemberRole[]).includes(role);
}

/** Why a route refuses a member of that role. */
export const roleNotAllowed = (role: MemberRole, permission: Permission | 'public' | undefined): Refused =>
  refused(
    'role-not-allowed',
    message('roleNotAllowed', {
      role,
      allowed: permission === undefined || permission === 'public' ? [] : access[permission],
    }),
  );
