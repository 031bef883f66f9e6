using PlatformForge.Clearance.Requests;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Exports.Manifests;
using PlatformForge.Sections.Forms;
using PlatformForge.Track;

namespace PlatformForge.Verification.Written;

/// <summary>
/// What a finished platform is held to. Taken from the project, never from the shapes that were made of it, so that a
/// fault in the shaping cannot hide itself.
/// </summary>
public sealed record DesignFacts
{
    /// <summary>Height of the rails' running surface above the baseboard, mm.</summary>
    public required double RailTop { get; init; }

    /// <summary>Every track that runs past the platforms, as it is ridden, with the vehicles on it.</summary>
    public required IReadOnlyList<TrackRun> Runs { get; init; }

    /// <summary>Play that lets vehicles stand off the track's middle.</summary>
    public RunningPlay Play { get; init; } = RunningPlay.None;

    /// <summary>What every point must keep from a vehicle displaced by its play, mm: the budget's margin.</summary>
    public double Asked { get; init; }

    /// <summary>Height in mm by which each part's band counts as taller, above and below.</summary>
    public double VerticalAllowance { get; init; }

    /// <summary>Height in mm that is kept above a part that lies under a coping, and where bodies pass over also below one.</summary>
    public double VerticalGap { get; init; }

    /// <summary>Height in mm above rail top down to which every part is taken to come, so that no platform reaches under a
    /// coach; a figure below the baseboard holds everything to every part. Null when bodies may pass over the coping.</summary>
    public double? HeldDownTo { get; init; }

    /// <summary>What the sections are printed on; null when that is not to be checked.</summary>
    public PrinterSpec? Printer { get; init; }

    /// <summary>The walking surface of the platform and what is planned to stand over it; null when that is not to be checked.</summary>
    public DesignDeck? Deck { get; init; }

    /// <summary>Where the platforms should stand along their tracks; empty when that is not to be checked.</summary>
    public IReadOnlyList<PlatformStretch> Stretches { get; init; } = [];
}

/// <summary>Where one platform should stand.</summary>
/// <param name="Platform">Its name, as <see cref="WrittenSection.Platform"/> has it.</param>
/// <param name="Track">The faced track.</param>
/// <param name="Side">Side of the track on which the platform lies.</param>
/// <param name="From">First chainage, mm.</param>
/// <param name="To">Last chainage, mm.</param>
/// <param name="Joint">Greatest gap in mm that trimmed section ends may leave between them.</param>
public sealed record PlatformStretch(string Platform, Centreline Track, Side Side, double From, double To, double Joint = 2 * JointSpec.MostEndTrim)
{
    /// <summary>Whether its ends and cuts are square to something else than its track, as an island's are, or a bank reaches past its ends.</summary>
    public bool IsSkew { get; init; }
}
