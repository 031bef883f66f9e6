using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using static System.FormattableString;

namespace PlatformForge.Exports.Drawings.Gaps;

/// <summary>
/// Names the lines of a gap plot without hiding any of them: lines that run together get one name, a name stands where no line passes, and where
/// there is no such place beside its own line a thin stroke leads to it. What finds no place is left to the key of marks.
/// </summary>
internal sealed class GapLabels
{
    // mm of paper: lines nearer than this everywhere are one to the eye; room between a name and any line; from a line to a name beside it; between
    // places tried, upwards and along; the farthest a name stands off; how far apart lines are told without looking twice.
    private const double Alike = 0.5, Room = 1.3, Beside = 1.6, StepUp = 1.2, StepAlong = 3, Farthest = 26, Apart = 2.5;

    // What a place costs, in mm of standing off: a stroke that has to lead to it, each mm by which the line is too near another to be told, and
    // each mm from the middle of the plot.
    private const double Leader = 3, Confused = 8, OffMiddle = 0.03;

    // Shares of the plot's width: the longest name.
    private const double LongestName = 0.6;

    private readonly PlotFrame frame;
    private readonly List<Line> lines = [];
    private readonly List<double[]> level = [];
    private readonly List<(double X0, double Y0, double X1, double Y1)> taken = [];
    private readonly int columns;

    public GapLabels(PlotFrame frame)
    {
        this.frame = frame;
        columns = (int)Math.Floor(frame.Width) + 1;
    }

    /// <summary>Adds a line that is to be named: places on the sheet in order from left to right, in stretches.</summary>
    public void Add(string vehicle, bool farthest, Rgb colour, IEnumerable<Point2[]> stretches) =>
        lines.Add(new(vehicle, farthest, colour, Heights(stretches)));

    /// <summary>Writes the words of a level line, above or below it where no other line passes, from the right.</summary>
    public void NameLevel(Sheet sheet, string words, TextStyle style, double y)
    {
        double length = TextStyle.Length(words, style);
        double[] own = [.. Enumerable.Repeat(y, columns)];
        level.Add(own);
        var places = from right in Enumerable.Range(0, columns).Select(i => frame.Right - 2.5 - i).Where(x => x - length > frame.Left + 1)
                     from drop in (double[])[-Beside, Beside + (style.Size * 0.75)]
                     select new Point2(right - length, y + drop);
        foreach (var at in places.Where(at => IsFree(Box(at, length, style), own, [.. lines.Select(l => l.Heights)])).Take(1))
        {
            Write(sheet, words, style, at, length);
            return;
        }

        var last = new Point2(frame.Right - 2.5 - length, y - Beside);
        var (x0, y0, x1, y1) = Box(last, length, style);
        sheet.Box(x0 - 0.6, y0 - 0.4, x1 - x0 + 1.2, y1 - y0 + 0.8, new(HouseStyle.Paper, 0.9));
        Write(sheet, words, style, last, length);
    }

    /// <summary>Writes the names of all lines.</summary>
    public void DrawOn(Sheet sheet)
    {
        var groups = new List<List<Line>>();
        foreach (var line in lines)
        {
            if (groups.Find(g => RunTogether(g[0].Heights, line.Heights)) is { } group)
            {
                group.Add(line);
            }
            else
            {
                groups.Add([line]);
            }
        }

        foreach (var group in groups)
        {
            Name(sheet, group, [.. groups.Where(g => g != group).Select(g => g[0].Heights), .. level]);
        }
    }

    /// <summary>What a group of lines is called.</summary>
    /// <param name="nearest">Vehicles whose nearest door it is.</param>
    /// <param name="farthest">Vehicles whose farthest door it is.</param>
    internal static string Words(IReadOnlyList<string> nearest, IReadOnlyList<string> farthest) =>
        nearest.SequenceEqual(farthest) ? Invariant($"{Together(nearest)}, every door")
        : string.Join("; ",
            new[] { (nearest, "nearest door"), (farthest, "farthest door") }.Where(w => w.Item1.Count > 0)
            .Select(w => Invariant($"{Together(w.Item1)}, {w.Item2}")));

    // Bodies of one set are told by the set's name once.
    private static string Together(IReadOnlyList<string> names)
    {
        int comma = names[0].LastIndexOf(", ", StringComparison.Ordinal) + 2;
        bool set = names.Count > 1 && comma > 1 && names.All(n => n.StartsWith(names[0][..comma], StringComparison.Ordinal));
        string[] said = set ? [.. names.Select(n => n[comma..])] : [.. names];
        string all = said.Length == 1 ? said[0] : Invariant($"{string.Join(", ", said[..^1])} and {said[^1]}");
        return set ? Invariant($"{names[0][..(comma - 2)]}: {all}") : all;
    }

    private void Name(Sheet sheet, List<Line> group, IReadOnlyList<double[]> others)
    {
        double[] own = group[0].Heights;
        string[] nearest = [.. group.Where(l => !l.Farthest).Select(l => l.Vehicle)], farthest = [.. group.Where(l => l.Farthest).Select(l => l.Vehicle)];
        string words = Words(nearest, farthest);
        var style = HouseStyle.Small with
        {
            Colour = group.Select(l => l.Vehicle).Distinct().Count() == 1 ? VehicleLooks.ForWords(group[0].Colour)
            : HouseStyle.Ink,
            Bold = true
        };
        if (TextStyle.Length(words, style) > LongestName * frame.Width)
        {
            words = Invariant($"{group.Count} lines, see the marks");
        }

        double length = TextStyle.Length(words, style);
        if (Best(own, others, length, style) is not { } place)
        {
            return;
        }

        if (place.Off > Beside)
        {
            sheet.Line(new(frame.Left + place.Column, own[place.Column]),
                new(frame.Left + place.Column, place.Down ? place.At.Y - (style.Size * 0.8) : place.At.Y + 0.7), new(0.15, style.Colour));
        }

        Write(sheet, words, style, place.At, length);
    }

    // Where a name may stand, and what that costs.
    private sealed record Place(Point2 At, int Column, double Off, bool Down, double Cost);

    // The cheapest free place; of several as cheap the leftmost and nearest.
    private Place? Best(double[] own, IReadOnlyList<double[]> others, double length, TextStyle style)
    {
        Place? best = null;
        for (int along = 0; along <= (int)(frame.Width / StepAlong) && (int)(along * StepAlong) < columns; along++)
        {
            int column = (int)(along * StepAlong);
            if (double.IsFinite(own[column]))
            {
                double near = others.Select(o => Math.Abs(o[column] - own[column])).Where(double.IsFinite).DefaultIfEmpty(Apart).Min();
                best = BestAt(column, near, best, own, others, length, style);
            }
        }

        return best;
    }

    // The same beside one place of the line, where it is cheaper than the best so far.
    private Place? BestAt(int column, double near, Place? best, double[] own, IReadOnlyList<double[]> others, double length, TextStyle style)
    {
        for (int step = 0; step < (int)(Farthest / StepUp); step++)
        {
            double off = Beside + (step * StepUp);
            double cost = off + (step > 0 ? Leader : 0) + (Confused * Math.Max(0, Apart - near)) + (OffMiddle * Math.Abs(column - (frame.Width / 2)));
            if (best is not null && cost >= best.Cost)
            {
                // Farther off costs more.
                return best;
            }

            foreach (bool down in (ReadOnlySpan<bool>)[false, true])
            {
                foreach (double share in (ReadOnlySpan<double>)[0.5, 0, 1])
                {
                    var at = new Point2(frame.Left + column - (share * length), own[column] + (down ? off + (style.Size * 0.75) : -off));
                    if (IsFree(Box(at, length, style), own, others) && IsLedTo(column, at.Y, own, others))
                    {
                        return new(at, column, off, down, cost);
                    }
                }
            }
        }

        return best;
    }

    private void Write(Sheet sheet, string words, TextStyle style, Point2 at, double length)
    {
        taken.Add(Box(at, length, style));
        sheet.Text(words, at, style);
    }

    private static (double X0, double Y0, double X1, double Y1) Box(Point2 at, double length, TextStyle style) =>
        (at.X, at.Y - (style.Size * 0.75), at.X + length, at.Y + (style.Size * 0.22));

    private bool IsFree((double X0, double Y0, double X1, double Y1) box, double[] own, IReadOnlyList<double[]> others)
    {
        if (box.X0 < frame.Left + 1 || box.X1 > frame.Right - 1 || box.Y0 < frame.Top + 1 || box.Y1 > frame.Bottom - 1
            || taken.Exists(t => box.X0 < t.X1 + Room && t.X0 < box.X1 + Room && box.Y0 < t.Y1 + (Room / 2) && t.Y0 < box.Y1 + (Room / 2)))
        {
            return false;
        }

        int first = Math.Max(0, (int)(box.X0 - frame.Left) - 1), last = Math.Min(columns - 1, (int)Math.Ceiling(box.X1 - frame.Left) + 1);
        return others.Append(own).All(line =>
        {
            // Its own line may pass a little nearer: the name belongs to it.
            double room = ReferenceEquals(line, own) ? Room / 2 : Room;
            for (int i = first; i <= last; i++)
            {
                if (line[i] > box.Y0 - room && line[i] < box.Y1 + room)
                {
                    return false;
                }
            }

            return true;
        });
    }

    // A stroke that crossed another line would seem to lead to that one.
    private static bool IsLedTo(int column, double to, double[] own, IReadOnlyList<double[]> others) =>
        others.All(o => !double.IsFinite(o[column]) || (o[column] - own[column]) * (o[column] - to) > 0 || Math.Abs(o[column] - own[column]) < Alike);

    private bool RunTogether(double[] a, double[] b)
    {
        for (int i = 0; i < columns; i++)
        {
            if (double.IsFinite(a[i]) != double.IsFinite(b[i]) || Math.Abs(a[i] - b[i]) > Alike)
            {
                return false;
            }
        }

        return true;
    }

    // Height on the sheet at every mm from the left of the frame; no number where the line is not.
    private double[] Heights(IEnumerable<Point2[]> stretches)
    {
        var heights = new double[columns];
        Array.Fill(heights, double.NaN);
        foreach (var stretch in stretches)
        {
            for (int i = 1; i < stretch.Length; i++)
            {
                Point2 a = stretch[i - 1], b = stretch[i];
                for (int c = Math.Max(0, (int)Math.Ceiling(a.X - frame.Left)); c < columns && frame.Left + c <= b.X; c++)
                {
                    heights[c] = b.X > a.X ? a.Y + ((b.Y - a.Y) * (frame.Left + c - a.X) / (b.X - a.X)) : a.Y;
                }
            }
        }

        return heights;
    }

    private sealed record Line(string Vehicle, bool Farthest, Rgb Colour, double[] Heights);
}
