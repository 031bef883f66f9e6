using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Sections.Forms;
using PlatformForge.Sections.Joints;
using PlatformForge.Solids;
using static System.FormattableString;

namespace PlatformForge.Proofs;

/// <summary>
/// Bores, pockets, holes and sockets as the sections have them, printed the same way round, at a row of fits with the figure of each beside it in hundredths of
/// a millimetre.
/// </summary>
internal static class Coupons
{
    /// <summary>Steps between fits, mm, and how many there are.</summary>
    public const double Step = 0.05;
    public const int Steps = 9;

    // Material between openings and round them, and what is left between two figures, mm.
    private const double Land = 1.6, Between = 1;

    // Openings wider than this, mm, are seats of buildings and no fit; more kinds than this are told by those that come first.
    private const double LargestPost = 15;

    // A socket longer than this, mm, is not printed whole, but a slice of it so long.
    private const double Whole = 5, Slice = 3;
    private const int MostKinds = 6;

    /// <summary>The fits of a coupon about the one in use, mm.</summary>
    public static double[] Fits(double now)
    {
        double first = Math.Max(0, Math.Round((now / Step) - (Steps / 2)) * Step);
        return [.. Enumerable.Range(0, Steps).Select(i => Math.Round(first + (i * Step), 2))];
    }

    /// <summary>The coupon of a joint; null where sections are only butted.</summary>
    public static (IReadOnlyList<ColumnBlock> Blocks, IReadOnlyList<ProofFigure> Figures, IReadOnlyList<string> Engraved)? OfJoint(JointSpec joint,
        PrinterSpec printer) => joint.Kind switch
        {
            JointKind.Dowel => Bores(joint, printer),
            JointKind.Plate => Pockets(joint, printer),
            _ => null,
        };

    private static (IReadOnlyList<ColumnBlock>, IReadOnlyList<ProofFigure>, IReadOnlyList<string>) Bores(JointSpec joint, PrinterSpec printer)
    {
        double[] fits = Fits(joint.Fit);
        string words = Invariant($"DOWEL {joint.DowelDiameter:0.##} FIT 1/100");
        double widest = joint.DowelDiameter + fits[^1] + (2 * joint.MouthChamfer), pitch = Math.Max(Legible(fits, words, printer), widest + Land),
            high = widest + (2 * Land);
        var (deep, figure, title) = Rows(joint.BoreDepth + Land, 0, printer);
        List<ColumnBlock> blocks = [Shape.Added(Shape.Box(0, 0, pitch * fits.Length, deep), 0, high),
            Shape.Relieved(default, new(pitch * fits.Length, 0), joint.FaceRelief)];
        for (int i = 0; i < fits.Length; i++)
        {
            double x = pitch * (i + 0.5);
            blocks.AddRange(BoreBlocks.Cut(new(0, new(x, 0, high / 2), new(0, 1, 0), joint.DowelDiameter + fits[i], joint.BoreDepth, 0), joint.MouthChamfer));
            blocks.AddRange(Lettering.Centred(Hundredths(fits[i]), new(x, figure), high, printer));
        }

        blocks.AddRange(Title(words, pitch * fits.Length, title, high, printer));
        return (blocks, Told("dowel", joint.DowelDiameter, fits), [words, .. fits.Select(Hundredths)]);
    }

    private static (IReadOnlyList<ColumnBlock>, IReadOnlyList<ProofFigure>, IReadOnlyList<string>) Pockets(JointSpec joint, PrinterSpec printer)
    {
        double[] fits = Fits(joint.Fit);
        string words = Invariant($"PLATE {joint.PlateWidth:0.##}/{joint.PlateThickness:0.##} FIT 1/100");
        double pitch = Math.Max(Legible(fits, words, printer), joint.PlateWidth + fits[^1] + Land), high = joint.PlateThickness + fits[^1] + Land;
        var (deep, figure, title) = Rows(0, joint.BoreDepth + 1, printer);
        List<ColumnBlock> blocks = [Shape.Added(Shape.Box(0, 0, pitch * fits.Length, deep), 0, high),
            Shape.Relieved(default, new(pitch * fits.Length, 0), joint.FaceRelief)];
        for (int i = 0; i < fits.Length; i++)
        {
            double x = pitch * (i + 0.5), half = (joint.PlateWidth + fits[i]) / 2;
            blocks.Add(Shape.Taken(Shape.Box(x - half, -1, x + half, joint.BoreDepth), high - joint.PlateThickness - fits[i], high + 1));
            blocks.AddRange(Lettering.Centred(Hundredths(fits[i]), new(x, figure), high, printer));
        }

        blocks.AddRange(Title(words, pitch * fits.Length, title, high, printer));
        return (blocks, Told("plate", joint.PlateWidth, fits), [words, .. fits.Select(Hundredths)]);
    }

    /// <summary>The coupon of all kinds of holes and sockets of the platforms' decks; null where they have none.</summary>
    public static (IReadOnlyList<ColumnBlock> Blocks, IReadOnlyList<ProofFigure> Figures,
        IReadOnlyList<string> Engraved)? OfDeck(IEnumerable<PlatformPlan> plans, PrinterSpec printer)
    {
        Kind[] kinds = [.. plans.SelectMany(Kinds).DistinctBy(k => (k.IsRound, Math.Round(k.Along, 2), Math.Round(k.Across, 2))).OrderBy(k => k.IsRound ? 0
            : 1).ThenBy(k => k.Along).Take(MostKinds)];
        if (kinds.Length == 0)
        {
            return null;
        }

        double thick = Math.Clamp(kinds.Max(k => k.Depth), 1.6, 4), line = Lettering.Room(["0"], printer).Y,
            label = kinds.Max(k => Lettering.Room([k.Label], printer).X) + 1.5, y = 1;
        double wide = kinds.Max(k => k.Pitch(printer)) * Steps;
        List<ColumnBlock> taken = [];
        List<ProofFigure> figures = [];
        foreach (var kind in kinds)
        {
            double[] fits = Fits(kind.Fit);
            double row = kind.Across + fits[^1], middle = y + line + 0.8 + (Land / 2) + (row / 2);
            for (int i = 0; i < fits.Length; i++)
            {
                Point2 at = new(label + (kind.Pitch(printer) * (i + 0.5)), middle);
                Point2[] ring = kind.Ring(at, fits[i]);
                taken.Add(Shape.Taken(ring, -1, thick + 1));
                taken.AddRange(kind.Mouth > 0 ? Enumerable.Range(0, ring.Length).Select(k => Shape.Relieved(ring[(k + 1) % ring.Length], ring[k], kind.Mouth))
                    : []);
                taken.AddRange(Lettering.Centred(Hundredths(fits[i]), new(at.X, y + (line / 2)), thick, printer));
            }

            taken.AddRange(Lettering.Cut([kind.Label], new(1, middle - (line / 2)), new(label, middle + (line / 2) + Lettering.Spare), thick, printer, 0));
            figures.AddRange(Told(kind.Words, kind.Tried, fits));
            y = middle + (row / 2) + Land;
        }

        return ([Shape.Added(Shape.Box(0, 0, label + wide + 1, y + 0.5), 0, thick), .. taken], figures,
            [.. kinds.SelectMany(k => Fits(k.Fit).Select(Hundredths).Prepend(k.Label))]);
    }

    private static IEnumerable<Kind> Kinds(PlatformPlan plan)
    {
        foreach (var opening in plan.Openings.Where(o => Math.Max(o.Along, o.Across) <= LargestPost))
        {
            double fit = opening.Narrowest.Fit;
            var prism = plan.Features.SelectMany(f => f.Prisms).FirstOrDefault(p => p.Act == PrismAct.Remove && p.Shows == PrismFace.Deck
                && p.Middle == opening.Middle);
            double along = opening.Along - fit, across = opening.Across - fit;
            bool isSlice = !opening.IsRound && Math.Max(along, across) > Whole;
            // Of a large socket a slice as wide as its narrower side proves the fit: what goes in is tried by its end.
            if (isSlice)
            {
                (along, across) = (Math.Min(along, across), Math.Min(Slice, Math.Min(along, across)));
            }

            yield return new(opening.IsRound, along, across, fit, isSlice ? 0 : opening.Depth ?? plan.Spec.Deck.Thickness,
                prism?.Mouth?.Size ?? 0)
            {
                IsSlice = isSlice,
                Round = opening.IsRound && prism is not null ? About(prism.Ring, opening.Along) : [],
            };
        }
    }

    // The hole's own ring about its middle, for a diameter of 1.
    private static Point2[] About(Point2[] ring, double diameter)
    {
        Point2 middle = new(ring.Average(p => p.X), ring.Average(p => p.Y));
        return Array.ConvertAll(ring, p => (p - middle) * (1 / diameter));
    }

    private static ProofFigure[] Told(string what, double size, double[] fits) =>
        [new($"{what}, what goes in", size), .. fits.Select(f => new ProofFigure(Invariant($"{what} marked {Hundredths(f)}"), size + f))];

    // Least distance from opening to opening, mm, at which neither figures nor the title run into one another or off the coupon.
    private static double Legible(double[] fits, string title, PrinterSpec printer) => Math.Max(
        Lettering.Room([.. fits.Select(Hundredths)], printer).X + Between, title.Length == 0 ? 0 : (Lettering.Room([title], printer).X + 2.1) / fits.Length);

    private static string Hundredths(double fit) => Invariant($"{Math.Round(fit * 100):0}");

    // Depth of a block that holds so much below its figures, and where the middles of its two lines of writing lie.
    private static (double Deep, double Figure, double Title) Rows(double solid, double before, PrinterSpec printer)
    {
        double line = Lettering.Room(["0"], printer).Y;
        return (Math.Max(solid, before + (2 * line) + 3), before + 1 + (line / 2), before + 2 + (1.5 * line));
    }

    private static IEnumerable<ColumnBlock> Title(string words, double width, double y, double z, PrinterSpec printer)
    {
        double line = Lettering.Room(["0"], printer).Y;
        return Lettering.Cut([words], new(1, y - (line / 2)), new(width - 1, y + (line / 2) + Lettering.Spare), z, printer, 0);
    }

    private sealed record Kind(bool IsRound, double Along, double Across, double Fit, double Depth, double Mouth)
    {
        public Point2[] Round { get; init; } = [];

        /// <summary>Of a larger socket, as wide as its narrower side and no longer than it need be.</summary>
        public bool IsSlice { get; init; }

        /// <summary>What of it is tried, mm.</summary>
        public double Tried => IsSlice ? Along : Math.Min(Along, Across);

        public string Words => IsRound ? "round hole" : IsSlice ? "slice of a square hole" : "square hole";

        public double Pitch(PrinterSpec printer) => Math.Max(Legible(Fits(Fit), "", printer), Along + Fits(Fit)[^1] + (2 * Mouth) + Land);

        public string Label => IsRound || IsSlice ? Invariant($"{Along:0.##}") : Invariant($"{Along:0.##}/{Across:0.##}");

        public Point2[] Ring(Point2 at, double fit) => Round.Length > 0
            ? Array.ConvertAll(Round, p => at + (p * (Along + fit)))
            : Shape.Box(at.X - ((Along + fit) / 2), at.Y - ((Across + fit) / 2), at.X + ((Along + fit) / 2), at.Y + ((Across + fit) / 2));
    }
}
