using PlatformForge.Geometry;

namespace PlatformForge.Track.Surveys.Drawings;

/// <summary>Puts drawn pieces end to end, turning those that were drawn the other way.</summary>
internal static class PieceJoiner
{
    /// <summary>Ends this near to one another, as a part of the drawing's size, are the same point: 0.1 mm in a metre.</summary>
    public const double Nearness = 1e-4;

    // Pieces of one line looked at; joining compares every end with every other.
    private const int MostPieces = 3000;

    /// <summary>The pieces joined into as few lines as they make, each beginning with its earliest piece in the file's order.</summary>
    public static List<DrawnPiece> Join(IReadOnlyList<DrawnPiece> pieces)
    {
        if (pieces.Count > MostPieces)
        {
            throw new UnreadableDrawingException("The line is drawn in more pieces than a track can need.");
        }

        double near = Nearness * Size(pieces);
        var left = pieces.ToList();
        var lines = new List<DrawnPiece>();
        while (left.Count > 0)
        {
            var line = left[0];
            left.RemoveAt(0);
            var before = new List<DrawnPiece>();
            var after = new List<DrawnPiece> { line };
            Point2 head = line.Points[0], tail = line.Points[^1];
            for (bool grown = true; grown;)
            {
                grown = Grow(left, ref tail, near, after, forward: true) | Grow(left, ref head, near, before, forward: false);
            }

            before.Reverse();
            lines.Add(Merge([.. before, .. after]));
        }

        return lines;
    }

    /// <summary>
    /// Where several lines fail to be one: the narrowest gap between ends of two of them, from the earlier line, or the place at
    /// which an end lies on another line between its ends.
    /// </summary>
    /// <param name="lines">Two lines at least, joined as far as they go.</param>
    /// <param name="near">Greatest distance between points that are the same.</param>
    public static (Point2 From, Point2 To, bool Branches, int At) Gap(List<DrawnPiece> lines, double near)
    {
        (Point2 From, Point2 To, bool Branches, int At) best = (lines[0].Points[^1], lines[1].Points[0], false, 1);
        for (int k = 1; k < Math.Min(lines.Count, MostCompared); k++)
        {
            for (int j = 0; j < k; j++)
            {
                foreach (var (one, other, at) in new[] { (lines[j], lines[k], k), (lines[k], lines[j], j) })
                {
                    foreach (var end in new[] { other.Points[0], other.Points[^1] })
                    {
                        if (one.Points.Any(p => (p - end).Length <= near))
                        {
                            return (end, end, true, at);
                        }
                    }
                }

                foreach (var from in new[] { lines[j].Points[0], lines[j].Points[^1] })
                {
                    foreach (var to in new[] { lines[k].Points[0], lines[k].Points[^1] })
                    {
                        best = (to - from).Length < (best.To - best.From).Length ? (from, to, false, k) : best;
                    }
                }
            }
        }

        return best;
    }

    // Lines among which the gap is looked for: the first of many tell as much.
    private const int MostCompared = 40;

    private static bool Grow(List<DrawnPiece> left, ref Point2 end, double near, List<DrawnPiece> chain, bool forward)
    {
        for (int i = 0; i < left.Count; i++)
        {
            var piece = left[i];
            bool start = (piece.Points[0] - end).Length <= near, finish = (piece.Points[^1] - end).Length <= near;
            if (!start && !finish)
            {
                continue;
            }

            // Growing forward, the piece must begin at the end reached; growing backward, it must finish there.
            var turned = (forward ? start : finish) ? piece : piece.Reversed();
            chain.Add(turned);
            end = forward ? turned.Points[^1] : turned.Points[0];
            left.RemoveAt(i);
            return true;
        }

        return false;
    }

    private static DrawnPiece Merge(IReadOnlyList<DrawnPiece> chain)
    {
        if (chain.Count == 1)
        {
            return chain[0];
        }

        var points = new List<Point2>(chain[0].Points);
        foreach (var piece in chain.Skip(1))
        {
            points.AddRange(piece.Points.Skip(1));
        }

        return new(chain[0].Names, [.. points], chain.All(p => p.Straights), chain.Min(p => p.Line));
    }

    internal static double Size(IReadOnlyList<DrawnPiece> pieces)
    {
        double x0 = double.PositiveInfinity, x1 = double.NegativeInfinity, y0 = x0, y1 = x1;
        foreach (var point in pieces.SelectMany(p => p.Points))
        {
            (x0, x1, y0, y1) = (Math.Min(x0, point.X), Math.Max(x1, point.X), Math.Min(y0, point.Y), Math.Max(y1, point.Y));
        }

        return Math.Max(x1 - x0, y1 - y0);
    }
}
