using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using PlatformForge.Units.Specs;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>What is cast on a manhole's cover.</summary>
public enum CoverPattern
{
    /// <summary>Grooves both ways, which leave studs.</summary>
    Studs,

    /// <summary>Grooves along the platform.</summary>
    Bars,

    /// <summary>Nothing.</summary>
    Plain,
}

/// <summary>
/// A manhole: a cover in its frame, flush with the deck and engraved as pavings are, since a deck is printed face down. Nothing opens. The paving ends at its
/// frame. Lengths in mm; sizes follow the scale, grooves do not.
/// </summary>
public sealed record ManholeSpec(double Chainage, double Inset, InsetFrom From = InsetFrom.Back) : PlacedSpec(Chainage, Inset, From, "manhole")
{
    // Full size, mm: a clear opening of 600 square is usual (from memory, no source); frame and pitch of studs: common practice, no source.
    private const double UsualSize = 600, UsualFrame = 75, UsualPitch = 110;

    // Two lines of the usual nozzle, mm: narrower bands between grooves are lost.
    private const double LeastBand = 0.8;

    private readonly double? along, across, frame, pitch;

    /// <summary>Full size over model size, for what is not stated.</summary>
    public double Ratio { get; init; } = 76.2;

    /// <summary>Size of the cover along the edge, within its frame.</summary>
    public double Along { get => along ?? UsualSize / Ratio; init => along = value; }

    /// <summary>Size of the cover square to the edge.</summary>
    public double Across { get => across ?? UsualSize / Ratio; init => across = value; }

    /// <summary>Width of the frame.</summary>
    public double Frame { get => frame ?? Math.Max(LeastBand, UsualFrame / Ratio); init => frame = value; }

    /// <summary>Width of the grooves round frame and cover and of the pattern. Default 0.4, one printed line (common practice, no source).</summary>
    public double Groove { get; init; } = 0.4;

    /// <summary>Depth of the grooves. Default 0.3, as joints of paving (common practice, no source).</summary>
    public double Depth { get; init; } = 0.3;

    public CoverPattern Pattern { get; init; } = CoverPattern.Studs;

    /// <summary>From one groove of the pattern to the next, about.</summary>
    public double Pitch { get => pitch ?? Math.Max(LeastBand + Groove, UsualPitch / Ratio); init => pitch = value; }

    public override string Word => "manhole";

    /// <summary>Its keys in the project file.</summary>
    public static SpecKeys<ManholeSpec> Keys { get; } = PlaceKeys<ManholeSpec>(
        s => new(double.NaN, double.NaN) { Fit = 0, Ratio = s.ToFullSize(1) }, "the cover's middle", ("580", "20"))
        .Length("along", NumberRange.From(1, 200), "Size of the cover along the platform, without its frame.", m => m.Along, (m, v) => m with { Along = v })
        .Length("across", NumberRange.From(1, 200), "Size of the cover across the platform.", m => m.Across, (m, v) => m with { Across = v })
        .Length("frame", NumberRange.From(LeastBand, 50), "Width of the frame round it.", m => m.Frame, (m, v) => m with { Frame = v })
        .Length("groove", NumberRange.From(0.2, 2), "Width of the grooves.", m => m.Groove, (m, v) => m with { Groove = v })
        .Length("depth", NumberRange.From(0.1, 5), "Depth of the grooves.", m => m.Depth, (m, v) => m with { Depth = v })
        .Choice("pattern", "What is cast on the cover.", m => m.Pattern, (m, v) => m with { Pattern = v },
            [("studs", CoverPattern.Studs), ("bars", CoverPattern.Bars), ("plain", CoverPattern.Plain)])
        .Length("pitch", NumberRange.From(0.5, 50), "From one groove of the pattern to the next, about.", m => m.Pitch, (m, v) => m with { Pitch = v });

    private protected override (double Along, double Across) Size => (Along + Border, Across + Border);

    // Frame and grooves on both sides of the cover.
    private double Border => 2 * (Frame + (2 * Groove));

    // Nothing of it stands on the deck.
    internal override IEnumerable<Finding> Early(PlatformSpec spec, PlatformSite site, string key) => Fits(spec, key);

    private protected override PlannedFeature At(FeatureSite site, PlanPlace place)
    {
        var (whole, deep) = Size;
        double half = whole / 2 / site.Stretch(place);
        return new(Name, site.Key)
        {
            Keepouts =
            [
                new(Name, site.Key, Chainage - half, Chainage + half, place.Reach - (deep / 2), place.Reach + (deep / 2))
                {
                    By = KeptOff.Cuts | KeptOff.Features,
                    Place = site.Key + ".at",
                },
            ],
            Prisms = [.. Prisms(site, place)],
            Marks =
            [
                new AreaMark("manhole", place, site.Oblong(place, whole, deep), whole, deep)
                {
                    Label = Name,
                    Inner = (site.Oblong(place, Along, Across), Invariant($"cover {Along:0.##} x {Across:0.##}")),
                },
            ],
            Made =
            [
                new(Name, Invariant($"cover {Along:0.##} by {Across:0.##}"), Invariant($"{whole:F2} by {deep:F2} with its frame, grooves {Depth:0.##} ")
                    + "deep", 1),
            ],
        };
    }

    // The deck made whole as deep as its paving is engraved, and what is engraved in that.
    private IEnumerable<Prism> Prisms(FeatureSite site, PlanPlace place)
    {
        double fill = Math.Max(site.Spec.Deck.Paving?.Depth ?? 0, Depth) + LeastFill;
        fill = Math.Min(fill, site.Spec.Deck.Thickness / 2);
        var (whole, deep) = Size;
        PrismEnd under = new(Datum.DeckTop, -fill), floor = new(Datum.DeckTop, -Depth);
        yield return new(place, whole, site.Oblong(place, whole, deep), under, new(Datum.DeckTop), PrismAct.Add, PrismFace.Deck)
        {
            Order = PrismOrder.OnDeck,
        };
        foreach (var (middle, along, across) in Grooves())
        {
            Point2 x = site.Tangent(place.Chainage), at = site.ToLayout(place) + (x * middle.X) + (x.Left * middle.Y);
            yield return new(place, whole, FeatureSite.Oblong(at, x, along, across), floor, PrismEnd.Open, PrismAct.Remove, PrismFace.Deck)
            {
                IsEngraved = true,
            };
        }
    }

    // Deck laid under the grooves, mm: a layer.
    private const double LeastFill = 0.2;

    /// <summary>Its grooves as oblongs about its middle, apart from one another or crossing: round the frame, round the cover, and on that.</summary>
    private IEnumerable<(Point2 Middle, double Along, double Across)> Grooves()
    {
        foreach (double round in (double[])[Frame + Groove, 0])
        {
            double length = Along + (2 * round), width = Across + (2 * round);
            foreach (double side in (double[])[-1, 1])
            {
                yield return (new(0, side * (width + Groove) / 2), length + (2 * Groove), Groove);
                yield return (new(side * (length + Groove) / 2, 0), Groove, width);
            }
        }

        foreach (double y in Pattern == CoverPattern.Plain ? [] : Rows(Across))
        {
            yield return (new(0, y), Along, Groove);
        }

        foreach (double x in Pattern == CoverPattern.Studs ? Rows(Along) : [])
        {
            yield return (new(x, 0), Groove, Across);
        }
    }

    // Middles of grooves that divide a length evenly.
    private IEnumerable<double> Rows(double length)
    {
        int bands = Math.Max(1, (int)Math.Round(length / Pitch));
        return Enumerable.Range(1, bands - 1).Select(k => (length * k / bands) - (length / 2));
    }

    private IEnumerable<Finding> Fits(PlatformSpec spec, string key)
    {
        double most = Math.Floor((spec.Deck.Thickness - FeatureSite.LeastLand) * 100) / 100;
        if (Depth > spec.Deck.Thickness - FeatureSite.LeastLand + FeatureSite.Grain)
        {
            yield return ManholeFindings.TooDeep(key, Name, Depth, most, spec.Deck.Thickness);
        }

        double Between(double length) => (length / Math.Max(1, Math.Round(length / Pitch))) - Groove;
        double band = Pattern switch
        {
            CoverPattern.Plain => Math.Min(Along, Across),
            CoverPattern.Bars => Between(Across),
            _ => Math.Min(Between(Along), Between(Across)),
        };
        if (band < LeastBand - FeatureSite.Grain)
        {
            yield return ManholeFindings.Lost(key, Name, band, LeastBand);
        }
    }
}

/// <summary>What is said of manholes alone.</summary>
internal static class ManholeFindings
{
    public static Finding TooDeep(string key, string name, double depth, double most, double deck) => Finding.Error(
        "PF4191",
        key + ".depth",
        Invariant($"The grooves of the {name} are {depth:0.###} mm deep in a deck of {deck:0.###} mm, and two printed lines have to be left under them."),
        most > 0 ? Invariant($"Give a depth of {most:0.##} mm or less, or make the deck thicker.") : "Make the deck thicker, or leave it out.",
        FaultKind.DesignRule).Curing(most >= 0.1 ? Cure.Set(key + ".depth", most) : Cure.LeaveOut(key));

    public static Finding Lost(string key, string name, double band, double least) => Finding.Error(
        "PF4192",
        key + ".pattern",
        Invariant($"What stands between the grooves of the {name} is {band:0.###} mm wide, and prints from {least:0.##} mm on, two lines of the usual nozzle."),
        "Give a greater pitch, a narrower groove or a larger cover, or have the cover plain.",
        FaultKind.DesignRule).Curing(Cure.Text(key + ".pattern", "plain"));
}
