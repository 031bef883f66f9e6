using PlatformForge.Clearance;
using PlatformForge.Geometry;
using PlatformForge.Track;

namespace PlatformForge.Verification;

/// <summary>
/// What a finished platform is held to. Taken from the project, never from the shapes that were made of it, so that a
/// fault in the shaping cannot hide itself.
/// </summary>
public sealed record DesignFacts
{
    /// <summary>Height of the rails' running surface above the baseboard, mm.</summary>
    public required double RailTop { get; init; }

    /// <summary>Every track that runs past the platforms, with the vehicles on it.</summary>
    public required IReadOnlyList<RunningStock> Stock { get; init; }

    /// <summary>Sideways play in mm of a vehicle at and between its pivots; beyond them it grows with the distance from
    /// midway between the pivots.</summary>
    public double Play { get; init; }

    /// <summary>Sum in mm of the budget's constant entries, which every point must keep from a vehicle displaced by its play.</summary>
    public double Asked { get; init; }

    /// <summary>Height in mm by which each part's band counts as taller, above and below.</summary>
    public double VerticalAllowance { get; init; }

    /// <summary>Height in mm above rail top down to which parts that ride higher are taken to come, so that no platform
    /// reaches under a coach; null when bodies may pass over the coping.</summary>
    public double? HeldDownTo { get; init; }

    /// <summary>What the sections are printed on; null when that is not to be checked.</summary>
    public PrintBed? Bed { get; init; }

    /// <summary>Where the platforms should stand along their tracks; empty when that is not to be checked.</summary>
    public IReadOnlyList<PlatformStretch> Stretches { get; init; } = [];
}

/// <summary>A track as it is ridden, kinks and all, and the vehicles that run on it.</summary>
public sealed record RunningStock(Centreline Ride, IReadOnlyList<Vehicle> Vehicles);

/// <summary>A printer's usable room, mm.</summary>
/// <param name="Outline">Ring of the bed, counter-clockwise.</param>
/// <param name="Height">Greatest height of a print.</param>
/// <param name="Margin">Distance to keep from the outline.</param>
/// <param name="Nozzle">Width of the nozzle; 0 when unknown.</param>
public sealed record PrintBed(IReadOnlyList<Point2> Outline, double Height, double Margin, double Nozzle);

/// <summary>Where one platform should stand.</summary>
/// <param name="Platform">Its name, as <see cref="WrittenSection.Platform"/> has it.</param>
/// <param name="Track">The faced track.</param>
/// <param name="Side">+1 where the platform lies left of increasing chainage, -1 where right.</param>
/// <param name="From">First chainage, mm.</param>
/// <param name="To">Last chainage, mm.</param>
/// <param name="Joint">Greatest gap in mm that trimmed section ends may leave between them.</param>
public sealed record PlatformStretch(string Platform, Centreline Track, int Side, double From, double To, double Joint = 0.5);
