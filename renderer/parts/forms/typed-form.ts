/**
 * A form in a sheet: it holds what was typed, as it was typed, and reads it when it is sent. Fields: FormFields.tsx; why
 * so: docs/decisions/0007-forms.md.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { zodResolver } from '@hookform/resolvers/zod';
import {
  type DefaultValues,
  type FieldErrors,
  type FieldValues,
  type Resolver,
  useForm,
  type UseFormReturn,
} from 'react-hook-form';
import type { z } from 'zod';
import type { Problem } from '../../../shared-core/measure/problem.ts';

/** What stands in a form at first, and how what is typed is read: of what is asked for now, as that may depend on it. */
export interface FormShape<Typed extends FieldValues, Read> {
  readonly start: Typed;
  readonly schema: (typed: Typed) => z.ZodType<Read, Typed>;
}

export interface TypedFormOptions<Typed extends FieldValues, Read> extends FormShape<Typed, Read> {
  /** What is not saved where something cannot be read: "The offer". path: of the field, by its names in the form. */
  readonly subject: string | ((typed: Typed, path: readonly string[]) => string);
  /** Saves what was read, and gives what was refused. */
  readonly save: (read: Read, typed: Typed) => Promise<readonly Problem[]>;
}

export interface TypedForm<Typed extends FieldValues, Read> extends UseFormReturn<Typed, unknown, Read> {
  /** For the sheet around it. */
  readonly sheet: { readonly onSave: () => Promise<readonly Problem[]>; readonly isTyped: boolean };
}

export function useTypedForm<Typed extends FieldValues, Read>(
  options: TypedFormOptions<Typed, Read>,
): TypedForm<Typed, Read> {
  const { start, schema, subject, save } = options;
  const resolver: Resolver<Typed, unknown, Read> = (typed, context, more) => {
    // The page's rules forbid code made at run time, by which zod would read faster.
    const read = zodResolver(schema(typed), { jitless: true }, { mode: 'sync' });
    return (read as Resolver<Typed, unknown, Read>)(typed, context, more);
  };
  const form = useForm<Typed, unknown, Read>({
    defaultValues: start as DefaultValues<Typed>,
    resolver,
    mode: 'onTouched',
    shouldFocusError: false,
  });
  const { isDirty } = form.formState;
  const onSave = async (): Promise<readonly Problem[]> => {
    let problems: readonly Problem[] = [];
    const typed = form.getValues();
    const send = form.handleSubmit(
      async (read) => {
        problems = await save(read, typed);
      },
      (errors) => {
        problems = unreadProblems(errors, (path) =>
          typeof subject === 'string' ? subject : subject(typed, path),
        );
      },
    );
    await send();
    return problems;
  };
  return { ...form, sheet: { onSave, isTyped: isDirty } };
}

/** Why a form cannot be saved yet: one problem for each text that cannot be read. */
export function unreadProblems(
  errors: FieldErrors,
  subjectAt: (path: readonly string[]) => string,
): Problem[] {
  return errorsIn(errors).map(({ path, message }) => ({
    where: subjectAt(path),
    what: say('typed-form.was-not-saved'),
    fix: message,
  }));
}

interface ErrorAt {
  readonly path: readonly string[];
  readonly message: string;
}

/** The errors are nested as the form is: an error has a message, and anything else holds more. */
function errorsIn(errors: unknown, path: readonly string[] = []): ErrorAt[] {
  if (typeof errors !== 'object' || errors === null) return [];
  if ('message' in errors && typeof errors.message === 'string') return [{ path, message: errors.message }];
  return Object.entries(errors).flatMap(([name, inside]) => errorsIn(inside, [...path, name]));
}
