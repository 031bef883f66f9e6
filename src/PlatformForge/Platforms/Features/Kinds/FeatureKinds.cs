using PlatformForge.Platforms.Specs;
using PlatformForge.Units.Specs;

namespace PlatformForge.Platforms.Features.Kinds;

/// <summary>All kinds of feature, each by its word in the project file: the one place that lists them.</summary>
internal static class FeatureKinds
{
    /// <summary>Puts them into the keys of a platform; features stand in this order.</summary>
    public static SpecKeys<PlatformSpec> On(SpecKeys<PlatformSpec> platform) => platform
        .Several("board", "A socket for a post of a running-in board or the like; wide and shallow, the seat of a building.", SocketSpec.Keys)
        .One("fence", "Holes for the posts of a fence along the back; left out, there are none.", FenceSpec.Keys)
        .Several("hole", "A round hole for a lamp, a canopy's post or a screw.", HoleSpec.Keys)
        .Several("lamp", "A hole through the deck for a lamp post, with a channel below the deck that leads its wires on past the next rib.", LampSpec.Keys)
        .Several(
            "fixing",
            "A pillar under the deck with a hole for a wood screw that comes up through the baseboard and holds the platform down.",
            FixingSpec.Keys)
        .Several("manhole", "A manhole's cover in its frame, engraved in the deck; the paving ends at it.", ManholeSpec.Keys);

    private static SpecKeys<PlatformSpec> Several<T>(this SpecKeys<PlatformSpec> platform, string word, string says, SpecKeys<T> keys)
        where T : FeatureSpec => platform.Tables(word, says, keys, p => p.Of<T>(), (p, features) => p.With(features));

    private static SpecKeys<PlatformSpec> One<T>(this SpecKeys<PlatformSpec> platform, string word, string says, SpecKeys<T> keys)
        where T : FeatureSpec => platform.Table(word, says, keys, p => p.Of<T>() is [var one, ..] ? one : null, (p, feature) => p.With([feature]));
}
