import { type MemberRole, memberRoles } from '../../shared/contract/people-names.ts';
import { message } from '../../shared/message/index.ts';
import { type Refused, refused } from './problem.ts';

/**
 * What each role may do: the one table that every route uses and `/reference` shows. Which role may send which
 * ticket command stands beside the triage machine (`commandRoles`), since the phone needs it too.
 */
export const access = {
  'own account': memberRoles,
  'follow changes': memberRoles,
  'read members': memberRoles,
  'manage members': ['admin'],
  'read organisation': memberRoles,
  'manage organisation': ['admin'],
  'export everything': ['admin'],
  'read the audit log': ['admin'],
  'read firmware levels': memberRoles,
  'manage firmware levels': ['admin', 'support'],
  'read sites': memberRoles,
  'write sites': ['dispatcher', 'technician', 'admin'],
  'read chains': memberRoles,
  'write chains': ['dispatcher', 'technician', 'admin'],
  'read tickets': memberRoles,
  'open tickets': ['dispatcher', 'technician', 'admin'],
  'update tickets': ['dispatcher', 'technician', 'admin'],
  'assign tickets': ['dispatcher', 'technician', 'admin'],
  'take over tickets': ['technician', 'admin'],
  'send ticket commands': memberRoles,
  'erase texts': ['admin'],
  'keep diaries': ['dispatcher', 'technician', 'admin'],
  'read evidence': memberRoles,
  'add evidence': memberRoles,
  'withdraw evidence': ['technician', 'dispatcher', 'admin'],
  'read packets': memberRoles,
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
