const width = 132;
const height = 30;
const edge = 2;

/** Line through a column's course; gaps where nothing stands. */
function pathOf(shape: readonly (number | null)[]): string {
  const values = shape.filter((v) => v !== null);
  const low = Math.min(...values);
  const span = Math.max(...values) - low || 1;
  let path = '';
  let pen = 'M';
  shape.forEach((value, i) => {
    if (value === null) {
      pen = 'M';
      return;
    }
    const x = edge + (i / Math.max(1, shape.length - 1)) * (width - 2 * edge);
    const y = height - edge - ((value - low) / span) * (height - 2 * edge);
    path += `${pen}${x.toFixed(1)} ${y.toFixed(1)}`;
    pen = 'L';
  });
  return path;
}

/** The course of a column over its rows. The values beside it say the rest. */
export function Sparkline({ shape }: { readonly shape: readonly (number | null)[] }) {
  if (!shape.some((v) => v !== null)) return null;
  return (
    <svg
      class="sparkline"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      aria-hidden="true"
    >
      <path d={pathOf(shape)} />
    </svg>
  );
}
