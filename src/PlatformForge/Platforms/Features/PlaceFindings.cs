using PlatformForge.Platforms.Plans;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Features;

/// <summary>Findings of places that features share.</summary>
internal static class PlaceFindings
{
    /// <param name="one">One of the two.</param>
    /// <param name="other">The other; of one name with the first, each is told by its chainage.</param>
    /// <param name="free">Which of them can move and the nearest chainage at which it stands clear of everything; null where there is none.</param>
    public static Finding Overlap(Keepout one, Keepout other, (Keepout Which, double Chainage)? free)
    {
        bool alike = one.Name == other.Name, same = alike && Place(one) == Place(other);
        static string Place(Keepout which) => Invariant($"{which.Middle:0.###}");
        string Called(Keepout which) => alike && !same ? Invariant($"{which.Name} at chainage {Place(which)} mm") : which.Name;
        string what = same ? Invariant($"Another {one.Name} stands where this one does, at chainage {Place(one)} mm.")
            : alike ? Invariant($"The {Called(one)} and the one at {Place(other)} mm stand in each other's place.")
            : Invariant($"The {one.Name} and the {other.Name} share the same place at chainage {Math.Max(one.From, other.From):0.#} mm.");
        string move = free is { } place ? Invariant($"Move {(same ? "one of them" : "the " + Called(place.Which))} to chainage {place.Chainage:0.###} mm, the ")
            + "nearest free place."
            : "No place along the platform is free for either: make one smaller, or leave it out.";
        return Finding.Error("PF4033", one.Key, what, move, FaultKind.DesignRule).Curing(free is { } at ? Cure.Set(at.Which.Place!, at.Chainage) : null);
    }
}
