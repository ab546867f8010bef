/** The word over its joint, the stripe painted across both. Whoever shows it imports mark.css. */
export function Logo() {
  return (
    <svg
      className="logo-word"
      width="232"
      height="102"
      viewBox="0 0 232 102"
      role="img"
      aria-label="Witnessmark"
    >
      <rect className="wm-stripe" x="2" y="6" width="12" height="92" />
      <text x="28" y="42">
        Witness
      </text>
      <path className="logo-joint" d="M15,53.5H230" />
      <text x="28" y="92">
        mark
      </text>
    </svg>
  );
}
