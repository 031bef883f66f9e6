using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Surfaces;
using PlatformForge.Sections.Forms;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>
/// A mask to be cut from film or card, at true size as it lies on its section's top, seen from above: mm, the section's end at the lower chainage to the left.
/// </summary>
/// <param name="Name">What it is for.</param>
/// <param name="Section">Number of the section it lies on.</param>
/// <param name="Outline">Outer line, closed, mm.</param>
/// <param name="Slot">What is cut out of it; null where nothing is.</param>
/// <param name="Ends">Lines across it where its stretch begins and ends: there it is laid to the next one, or to the section's end.</param>
/// <param name="Words">A place without slot or edge for its mark: middle, direction along the track, length and width.</param>
internal sealed record MaskPiece(
    string Name, int Section, IReadOnlyList<Point2> Outline, IReadOnlyList<Point2>? Slot, IReadOnlyList<(Point2 From, Point2 To)> Ends,
    (Point2 Middle, Point2 Along, Point2 Room) Words)
{
    // A stencil's border on either side of its slot, and beyond its ends, mm: what masking tape needs to hold (common practice, no source).
    private const double Border = 10;

    // A slot goes on so far beyond the end of its section where the line does, mm, so that no gap is left at the joint.
    private const double Beyond = 1;

    // No section is longer than so many beds.
    private const int MostParts = 12;

    /// <summary>The masks of a platform, section by section: one that covers the deck while copings are painted, and a stencil for each white line.</summary>
    /// <param name="set">The sections.</param>
    /// <param name="fits">Whether an outline goes on the bed; what does not is made in parts, each a mask of its own. Null for masks that are cut.</param>
    public static IReadOnlyList<MaskPiece> Of(SectionSet set, Func<IReadOnlyList<Point2>, bool>? fits = null)
    {
        var body = set.Plan.Body;
        var pieces = new List<MaskPiece>();
        foreach (var top in SectionTop.Of(set))
        {
            var flat = new Flat(top, body);
            var (first, last) = CopingReturn.Within(set.Plan, body.Stations[0], body.Stations[^1]);
            pieces.AddRange(Parts("deck cover", Math.Max(top.From, first), Math.Min(top.To, last), fits,
                (name, from, to, _, _) => flat.Cover(name, body, from, to)));
            foreach (var (line, i) in body.Lines.Where(l => l.Made.IsPainted).Select((l, i) => (l, i)))
            {
                double from = Math.Max(line.From, top.From - (top.Section.Number > 1 ? Beyond : 0)), to = Math.Min(line.To, top.To
                    + (top.Section.Number < top.Section.Count ? Beyond : 0));
                if (to - from > 2 * Beyond)
                {
                    string called = body.Lines.Count(l => l.Made.IsPainted) > 1 ? Invariant($"line stencil, face {i + 1}") : "line stencil";
                    pieces.AddRange(Parts(called, from, to, fits, (name, a, b, first, last) =>
                        flat.Stencil(name, line.Near, line.Far, (a, b), (first ? 0 : Beyond, last ? 0 : Beyond))));
                }
            }
        }

        return pieces;
    }

    // As few parts of one length as go on the bed; those that never do are left whole, and told of as too large.
    private static MaskPiece[] Parts(
        string name, double from, double to, Func<IReadOnlyList<Point2>, bool>? fits, Func<string, double, double, bool, bool, MaskPiece> made)
    {
        for (int count = 1; count <= MostParts; count++)
        {
            MaskPiece[] parts = [.. Enumerable.Range(0, count).Select(i => made(count == 1 ? name : Invariant($"{name}, part {i + 1} of {count}"),
                from + ((to - from) * i / count), from + ((to - from) * (i + 1) / count), i == 0, i == count - 1))];
            if (fits is null || Array.TrueForAll(parts, p => fits(p.Outline)))
            {
                return parts;
            }
        }

        return [made(name, from, to, true, true)];
    }

    /// <summary>Width of its slot at its middle, mm; null where it has none.</summary>
    public double? SlotWidth => Slot is { } slot ? (slot[slot.Count / 4] - slot[^((slot.Count / 4) + 1)]).Length : null;

    /// <summary>Its box, mm.</summary>
    public (Point2 Low, Point2 High) Box() => (new(Outline.Min(p => p.X), Outline.Min(p => p.Y)), new(Outline.Max(p => p.X), Outline.Max(p => p.Y)));

    // The top of a section laid out flat: x from its lower end to its upper one along the coping's edge, y to the left of that.
    private sealed class Flat
    {
        private readonly SectionTop top;
        private readonly Point3 origin;
        private readonly Point3 along;
        private readonly Point3 left;

        public Flat(SectionTop top, BodyPlan body)
        {
            this.top = top;
            origin = top.At(top.From, body.CopingFront.At(top.From));
            Point3 ahead = top.At(top.To, body.CopingFront.At(top.To)) - origin, across = top.At(top.From, body.Back.At(top.From)) - origin;
            along = ahead * (1 / ahead.Length);
            var up = Point3.Cross(along, across);
            up = up * (Math.Sign(up.Z) / up.Length);
            left = Point3.Cross(up, along);
        }

        public MaskPiece Cover(string name, BodyPlan body, double from, double to)
        {
            var (near, far) = (body.CopingBack, body.FarCopingBack ?? body.Back);
            return new(name, top.Section.Number, Ring(near, far, from, to), null, [], Words(near, far, from, to));
        }

        // Beyond its own stretch the slot goes on a little, so that no gap is left where two meet; it is laid by the ends of the section all the same.
        public MaskPiece Stencil(string name, PlanLine near, PlanLine far, (double From, double To) own, (double Before, double After) more)
        {
            double from = own.From - more.Before, to = own.To + more.After;
            double lower = Math.Max(own.From, top.From), upper = Math.Min(own.To, top.To);
            var (outerNear, outerFar) = (near.Shifted(-Border), far.Shifted(Border));
            return new(name, top.Section.Number, Ring(outerNear, outerFar, from - Border, to + Border), Ring(near, far, from, to),
                [(On(outerNear, lower), On(outerFar, lower)), (On(outerNear, upper), On(outerFar, upper))], Words(far, outerFar, own.From, own.To));
        }

        private (Point2 Middle, Point2 Along, Point2 Room) Words(PlanLine near, PlanLine far, double from, double to)
        {
            double middle = (from + to) / 2;
            Point2 a = On(near, middle), b = On(far, middle), across = b - a, right = On(near, to) - On(near, from);
            return ((a + b) * 0.5, right * (1 / right.Length), new(Math.Min(right.Length / 2, MostWords), across.Length * 0.7));
        }

        // mm of a mask's length that its mark takes.
        private const double MostWords = 40;

        private Point2 On(PlanLine line, double chainage) => Laid(top.At(chainage, line.At(chainage)));

        public Point2[] Ring(PlanLine near, PlanLine far, double from, double to) =>
            [.. top.Line(near, from, to).Select(Laid), .. top.Line(far, from, to).Reverse().Select(Laid)];

        private Point2 Laid(Point3 p) => new(Point3.Dot(p - origin, along), Point3.Dot(p - origin, left));
    }
}
