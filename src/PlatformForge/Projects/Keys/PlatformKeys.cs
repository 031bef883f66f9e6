using PlatformForge.Platforms.Specs;
using PlatformForge.Platforms.Values;
using PlatformForge.Projects.Keys.Grammar;
using PlatformForge.Projects.Reading;
using PlatformForge.Units;

namespace PlatformForge.Projects.Keys;

/// <summary>Keys of <c>[[platform]]</c>: those of its room, and how they go together in a file.</summary>
internal static class PlatformKeys
{
    public static KeyTable<PlatformSpec> Table { get; } = new KeyTable<PlatformSpec>(PlatformSpecKeys.All)
        .Check((p, table, key, reading) =>
        {
            // The kind says once more what the faces say: where both are stated they have to agree.
            bool island = table.Find("kind")?.Value is TreeText { Value: "island" }, side = table.Find("kind")?.Value is TreeText { Value: "side" };
            if (island && !p.IsIsland)
            {
                reading.Fault("PF1013", key + ".other_face", table.Place, "An island has a face on either side, and only one is stated.",
                    "Give other_face = { track = \"...\", side = \"...\" }, the track on its other side, or leave kind out.", Cure.LeaveOut(key + ".kind"));
            }

            if (side && p.IsIsland)
            {
                reading.Fault("PF1014", key + ".kind", table.Place, "A platform with a face on either side is no side platform.",
                    "Say kind = \"island\", or leave it out.", Cure.Text(key + ".kind", "island"));
            }

            if (p.IsIsland && (table.Find("deck")?.Value as TreeTable)?.Find("width") is { } width)
            {
                reading.Fault("PF1014", key + ".deck.width", width.Value.Place, "An island is as wide as its two faces leave it.",
                    "Leave width out; the least width found is told.", Cure.LeaveOut(key + ".deck.width"));
            }
        });
}
