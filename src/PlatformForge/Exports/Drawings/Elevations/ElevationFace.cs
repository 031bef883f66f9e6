using PlatformForge.Exports.Drawings.Elevations.Walls;
using PlatformForge.Exports.Looks;
using PlatformForge.Geometry;
using PlatformForge.Platforms.Plans.Fittings;
using PlatformForge.Solids;

namespace PlatformForge.Exports.Drawings.Elevations;

/// <summary>A face of a platform that is drawn.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Slices">Its walls from left to right; none where the back is another than a wall.</param>
/// <param name="Slab">Thickness of what lies on them, mm.</param>
/// <param name="Paint">What that shows.</param>
internal sealed record ElevationFace(string Name, IReadOnlyList<WallSlice> Slices, double Slab, Paint Paint)
{
    /// <summary>A back without a wall, as it is seen from behind.</summary>
    public BackSight? Back { get; init; }

    /// <summary>What it is made of, in words; of walls their finishes say it.</summary>
    public string? Words { get; init; }

    /// <summary>Height over the baseboard of the line that it stands on, mm: the deck for what stands on that.</summary>
    public double Base { get; init; }

    /// <summary>Height of a plain plinth under its walls, mm.</summary>
    public double Plinth { get; init; }

    /// <summary>Height of the head of a plinth that its walls have in their profile, mm over the baseboard; null without one.</summary>
    public double? PlinthHead { get; init; }

    /// <summary>How much of the deck's edge, under what lies on it, shows between that and the walls, mm.</summary>
    public double DeckEdge { get; init; }

    /// <summary>Height of the rails' tops over the baseboard on a face that has a track, mm.</summary>
    public double? RailTop { get; init; }

    /// <summary>What stands on the deck over it.</summary>
    public IReadOnlyList<StandingBand> Over { get; init; } = [];

    /// <summary>What stands on the deck and is seen over the face, the farthest first.</summary>
    public IReadOnlyList<StandingMark> Standing { get; init; } = [];

    /// <summary>What shows beside and over an end wall.</summary>
    public IReadOnlyList<EndShape> Shapes { get; init; } = [];

    /// <summary>Places in plan of the joints that what lies on it shows on its front.</summary>
    public IReadOnlyList<Point2> Joints { get; init; } = [];

    /// <summary>What stands before its walls.</summary>
    public IReadOnlyList<FittingSight> Fittings { get; init; } = [];

    /// <summary>What was asked for of things in and before the platform's walls.</summary>
    public IReadOnlyList<FittingRow> Fitted { get; init; } = [];

    /// <summary>What a hole in its walls is; null for one that no plan has.</summary>
    public FittingRow? RowOf(WallHole hole) => Fitted.FirstOrDefault(r => r.Places.Any(p => p.Hole is not null && p.Number == hole.Number));

    /// <summary>Its length, mm.</summary>
    public double Length => Back?.Length ?? Slices.Sum(s => s.Length);

    /// <summary>Whether a section ends where a slice, or a row's part of one, does.</summary>
    public bool Ends(WallSlice slice) => slice.To >= slice.Whole.To
        && !Slices.SkipWhile(s => s.Wall != slice.Wall || s.Whole != slice.Whole).Skip(1).Take(1).Any(s => !s.Begins);

    /// <summary>It in rows of whole sections as long as they fit, else parted.</summary>
    /// <param name="room">Longest row, mm of the model.</param>
    /// <param name="scale">Sheet mm to a mm of the model.</param>
    public IReadOnlyList<IElevationRow> Rows(double room, double scale) => Back?.Rows(room, scale, Standing) ?? [.. WallSlice.Rows(Slices, room)
        .Select(r => new ElevationRow(r, scale, this))];
}

/// <summary>What stands on a deck behind what is drawn: a kerb, a retaining wall.</summary>
/// <param name="From">Where it begins in plan.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Low">Where it begins over the deck, mm.</param>
/// <param name="High">Where it ends.</param>
/// <param name="Colour">Its colour.</param>
internal sealed record StandingBand(Point2 From, Point2 To, double Low, double High, Rgb Colour)
{
    /// <summary>Where it begins and ends along a slice, from where that begins, mm; nowhere where it ends before it begins.</summary>
    public (double From, double To) Along(WallSlice slice)
    {
        double a = WallBand.Along(slice.Wall, slice.Whole, From) - slice.From, b = WallBand.Along(slice.Wall, slice.Whole, To) - slice.From;
        return (Math.Max(0, Math.Min(a, b)), Math.Min(slice.Length, Math.Max(a, b)));
    }

    /// <summary>How far it stands over a deck of a height, mm.</summary>
    public double Rise(double deck) => HighAt is { } level ? level - deck : High;

    /// <summary>Heights over the baseboard of its edges, mm, where these run on level whatever the deck does.</summary>
    public double? LowAt { get; init; }

    /// <inheritdoc cref="LowAt"/>
    public double? HighAt { get; init; }
}
