namespace PlatformForge.Projects.Reading;

/// <summary>
/// Keys as the rooms name them (after their records) and as the project file has them. Rooms know no file; where the two words
/// differ, this is the one place that says so.
/// </summary>
internal static class RoomWords
{
    /// <summary>Table that the word stands in (empty for any), the room's word, the file's word.</summary>
    private static readonly (string Home, string Word, string Key)[] Pairs =
    [
        ("platform", "white_line", "line"),
        ("platform", "forced_cuts", "cuts"),
        ("platform", "walls", "wall"),
        ("wall", "front", "front_thickness"),
        ("wall", "back", "back_thickness"),
        ("wall", "end", "end_thickness"),
        ("ribs", "longitudinal_count", "lengthwise"),
        ("ribs", "longitudinal_thickness", "lengthwise_thickness"),
        ("start", "foot_height", "foot"),
        ("end", "foot_height", "foot"),
        ("vehicle", "pivot_centres", "pivots"),
        ("body", "pivot_centres", "pivots"),
    ];

    /// <summary>The key of the project file for a key as a room names it.</summary>
    public static string ToFile(string key)
    {
        string[] steps = key.Split('.');
        string home = "";
        for (int i = 0; i < steps.Length; i++)
        {
            int bracket = steps[i].IndexOf('[', StringComparison.Ordinal);
            string word = bracket < 0 ? steps[i] : steps[i][..bracket], index = bracket < 0 ? "" : steps[i][bracket..];
            string name = Pairs.FirstOrDefault(p => p.Home == home && p.Word == word).Key ?? word;
            steps[i] = name + index;
            home = name;
        }

        return string.Join('.', steps);
    }
}
