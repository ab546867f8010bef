interface TroubleProps {
  readonly words: string | null;
  readonly onDismiss?: () => void;
}

/** An error of the app: words and a red edge, no mark. Marks stand for the aircraft. */
export function Trouble({ words, onDismiss }: TroubleProps) {
  if (words === null) return null;
  return (
    <div className="trouble" role="alert">
      <span>{words}</span>
      {onDismiss === undefined ? null : (
        <button type="button" className="button" onClick={onDismiss}>
          Close
        </button>
      )}
    </div>
  );
}
