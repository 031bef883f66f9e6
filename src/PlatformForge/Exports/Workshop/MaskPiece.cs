using PlatformForge.Geometry;
using PlatformForge.Platforms;
using PlatformForge.Sections;
using static System.FormattableString;

namespace PlatformForge.Exports.Workshop;

/// <summary>
/// A mask to be cut from film or card, at true size as it lies on its section's top, seen from above: mm, the section's end at the lower chainage to the left.
/// </summary>
/// <param name="Name">What it is for.</param>
/// <param name="Section">Number of the section it lies on.</param>
/// <param name="Outline">Outer line, closed, mm.</param>
/// <param name="Slot">What is cut out of it; null where nothing is.</param>
internal sealed record MaskPiece(string Name, int Section, IReadOnlyList<Point2> Outline, IReadOnlyList<Point2>? Slot)
{
    // A stencil's border on either side of its slot, and beyond its ends, mm: what masking tape needs to hold (common practice, no source).
    private const double Border = 10;

    // A slot goes on so far beyond the end of its section where the line does, mm, so that no gap is left at the joint.
    private const double Beyond = 1;

    /// <summary>The masks of a platform, section by section: one that covers the deck while copings are painted, and a stencil for each white line.</summary>
    public static IReadOnlyList<MaskPiece> Of(SectionSet set)
    {
        var body = set.Plan.Body;
        var pieces = new List<MaskPiece>();
        foreach (var top in SectionTop.Of(set))
        {
            var flat = new Flat(top, body);
            pieces.Add(new("deck cover", top.Section.Number, flat.Ring(body.CopingBack, body.FarCopingBack ?? body.Back, top.From, top.To), null));
            foreach (var (line, i) in body.Lines.Select((l, i) => (l, i)))
            {
                double from = Math.Max(line.From, top.From - (top.Section.Number > 1 ? Beyond : 0)), to = Math.Min(line.To, top.To
                    + (top.Section.Number < top.Section.Count ? Beyond : 0));
                if (to - from > 2 * Beyond)
                {
                    string name = body.Lines.Count > 1 ? Invariant($"line stencil, face {i + 1}") : "line stencil";
                    pieces.Add(new(name, top.Section.Number, flat.Ring(line.Near.Shifted(-Border), line.Far.Shifted(Border), from - Border, to + Border),
                        flat.Ring(line.Near, line.Far, from, to)));
                }
            }
        }

        return pieces;
    }

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

        public Point2[] Ring(PlanLine near, PlanLine far, double from, double to) =>
            [.. top.Line(near, from, to).Select(Laid), .. top.Line(far, from, to).Reverse().Select(Laid)];

        private Point2 Laid(Point3 p) => new(Point3.Dot(p - origin, along), Point3.Dot(p - origin, left));
    }
}
