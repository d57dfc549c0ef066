/** A sheet's protection. */
import { accessDenied, invalidArgument, kind, type Kind } from '../kind';
import type { Plain, Sheet } from '../model';

export const SHEET_PROTECTION: Kind<Sheet> = kind<Sheet>('WorksheetProtection', {
  scalars: {
    Protected: { get: (sheet) => sheet.protection !== undefined },
    Options: { get: (sheet) => sheet.protection?.options ?? null },
  },
  methods: {
    Protect(sheet, [options, password]) {
      if (sheet.protection !== undefined) throw accessDenied();
      sheet.protection = { options: (options ?? {}) as Plain, password: String(password ?? '') };
    },
    Unprotect(sheet, [password]) {
      if (sheet.protection !== undefined && sheet.protection.password !== String(password ?? ''))
        throw invalidArgument();
      sheet.protection = undefined;
    },
  },
});
