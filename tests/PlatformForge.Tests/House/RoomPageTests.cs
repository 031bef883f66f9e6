using System.Text.RegularExpressions;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>Every room has a page of a screen, and what it names is there.</summary>
public class RoomPageTests
{
    private const int Screen = 45;

    public static TheoryData<string> Rooms() => [.. RoomOrderTests.Rooms];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_room_says_what_comes_in_what_goes_out_and_its_laws_on_one_screen(string room)
    {
        string page = Page(room);
        Assert.InRange(page.Split('\n').Length, 8, Screen);
        Assert.Matches("(?m)^(# |`?\\w+`?\\. )?.*Enters", page);
        Assert.Contains("eaves:", page, StringComparison.Ordinal);
        Assert.Matches("(?m)^(Laws|Promises)", page);
        Assert.Contains("Where to add", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void What_a_room_s_page_names_is_there(string room)
    {
        var library = typeof(PlatformForge.Units.Finding).Assembly.GetTypes();
        string folder = Path.Combine(SourceTree.Root, "src", "PlatformForge");
        HashSet<string> known =
        [
            .. library.Select(t => t.Name.Split('`')[0]), .. library.SelectMany(t => t.GetMembers(All)).Select(m => m.Name),
            .. Directory.EnumerateDirectories(folder, "*", SearchOption.AllDirectories).Select(f => Path.GetFileName(f)!),
        ];
        Assert.Empty(
            from Match named in Regex.Matches(Page(room), @"`([A-Z][\w/]*)(\.\w+)?(<\w>)?s?`")
            let last = named.Groups[1].Value.Split('/')[^1]
            where !known.Contains(last)
            select $"{room}/README.md names {named.Groups[1].Value}, which is no type, no member and no folder");
    }

    private const System.Reflection.BindingFlags All =
        System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.NonPublic | System.Reflection.BindingFlags.Instance
        | System.Reflection.BindingFlags.Static;

    private static string Page(string room) => File.ReadAllText(Path.Combine(SourceTree.Root, "src", "PlatformForge", room, "README.md"));
}
