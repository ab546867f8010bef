interface FieldWrongProps {
  readonly says: string | undefined;
  /** For the field that it describes. */
  readonly id?: string;
}

/** What is wrong with a field, beside it; nothing while nothing is. */
export function FieldWrong({ says, id }: FieldWrongProps) {
  return says === undefined ? null : (
    <span className="field-wrong" role="alert" id={id}>
      {says}
    </span>
  );
}
