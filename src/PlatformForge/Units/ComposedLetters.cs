namespace PlatformForge.Units;

/// <summary>
/// Letters with a mark as one character and as two: the same letter to every reader, and here the same text. The runtime does this
/// only where data on cultures is installed; the tool runs the same without.
/// </summary>
/// <remarks>Latin, Greek and Cyrillic letters by the Unicode Character Database, canonical compositions.</remarks>
public static class ComposedLetters
{
    /// <summary>By mark: pairs of a bare letter and the letter with that mark.</summary>
    private static readonly (char Mark, string Pairs)[] ByMark =
    [
        ('\u0300',
            "AÀEÈIÌOÒUÙaàeèiìoòuùÜǛüǜNǸnǹЕЀИЍеѐиѝĒḔēḕŌṐōṑWẀwẁÂẦâầĂẰăằÊỀêềÔỒôồƠỜơờƯỪưừYỲyỳἀἂἁἃἈἊἉἋἐἒἑἓἘἚἙἛἠἢἡἣἨἪἩἫἰἲἱἳἸἺἹἻὀὂὁὃ" +
            "ὈὊὉὋὐὒὑὓὙὛὠὢὡὣὨὪὩὫαὰεὲηὴιὶοὸυὺωὼΑᾺΕῈΗῊ᾿῍ϊῒΙῚ῾῝ϋῢΥῪ¨῭ΟῸΩῺ"),
        ('\u0301',
            "AÁEÉIÍOÓUÚYÝaáeéiíoóuúyýCĆcćLĹlĺNŃnńRŔrŕSŚsśZŹzźÜǗüǘGǴgǵÅǺåǻÆǼæǽØǾøǿ¨΅ΑΆΕΈΗΉΙΊΟΌΥΎΩΏϊΐαάεέηήιίϋΰοόυύωώϒϓГЃКЌгѓкќ" +
            "ÇḈçḉĒḖēḗÏḮïḯKḰkḱMḾmḿÕṌõṍŌṒōṓPṔpṕŨṸũṹWẂwẃÂẤâấĂẮăắÊẾêếÔỐôốƠỚơớƯỨưứἀἄἁἅἈἌἉἍἐἔἑἕἘἜἙἝἠἤἡἥἨἬἩἭἰἴἱἵἸἼἹἽὀὄὁὅὈὌὉὍὐὔὑὕὙὝὠὤ" +
            "ὡὥὨὬὩὭ᾿῎῾῞"),
        ('\u0302', "AÂEÊIÎOÔUÛaâeêiîoôuûCĈcĉGĜgĝHĤhĥJĴjĵSŜsŝWŴwŵYŶyŷZẐzẑẠẬạậẸỆẹệỌỘọộ"),
        ('\u0303', "AÃNÑOÕaãnñoõIĨiĩUŨuũVṼvṽÂẪâẫĂẴăẵEẼeẽÊỄêễÔỖôỗƠỠơỡƯỮưữYỸyỹ"),
        ('\u0304', "AĀaāEĒeēIĪiīOŌoōUŪuūÜǕüǖÄǞäǟȦǠȧǡÆǢæǣǪǬǫǭÖȪöȫÕȬõȭȮȰȯȱYȲyȳИӢиӣУӮуӯGḠgḡḶḸḷḹṚṜṛṝαᾱΑᾹιῑΙῙυῡΥῩ"),
        ('\u0306', "AĂaăEĔeĕGĞgğIĬiĭOŎoŏUŬuŭУЎИЙийуўЖӁжӂАӐаӑЕӖеӗȨḜȩḝẠẶạặαᾰΑᾸιῐΙῘυῠΥῨ"),
        ('\u0307', "CĊcċEĖeėGĠgġIİZŻzżAȦaȧOȮoȯBḂbḃDḊdḋFḞfḟHḢhḣMṀmṁNṄnṅPṖpṗRṘrṙSṠsṡŚṤśṥŠṦšṧṢṨṣṩTṪtṫWẆwẇXẊxẋYẎyẏſẛ"),
        ('\u0308', "AÄEËIÏOÖUÜaäeëiïoöuüyÿYŸΙΪΥΫιϊυϋϒϔЕЁІЇеёіїАӒаӓӘӚәӛЖӜжӝЗӞзӟИӤиӥОӦоӧӨӪөӫЭӬэӭУӰуӱЧӴчӵЫӸыӹHḦhḧÕṎõṏŪṺūṻWẄwẅXẌxẍtẗ"),
        ('\u0309', "AẢaảÂẨâẩĂẲăẳEẺeẻÊỂêểIỈiỉOỎoỏÔỔôổƠỞơởUỦuủƯỬưửYỶyỷ"),
        ('\u030A', "AÅaåUŮuůwẘyẙ"),
        ('\u030B', "OŐoőUŰuűУӲуӳ"),
        ('\u030C', "CČcčDĎdďEĚeěLĽlľNŇnňRŘrřSŠsšTŤtťZŽzžAǍaǎIǏiǐOǑoǒUǓuǔÜǙüǚGǦgǧKǨkǩƷǮʒǯjǰHȞhȟ"),
        ('\u030F', "AȀaȁEȄeȅIȈiȉOȌoȍRȐrȑUȔuȕѴѶѵѷ"),
        ('\u0311', "AȂaȃEȆeȇIȊiȋOȎoȏRȒrȓUȖuȗ"),
        ('\u0313', "αἀΑἈεἐΕἘηἠΗἨιἰΙἸοὀΟὈυὐωὠΩὨρῤ"),
        ('\u0314', "αἁΑἉεἑΕἙηἡΗἩιἱΙἹοὁΟὉυὑΥὙωὡΩὩρῥΡῬ"),
        ('\u031B', "OƠoơUƯuư"),
        ('\u0323', "BḄbḅDḌdḍHḤhḥKḲkḳLḶlḷMṂmṃNṆnṇRṚrṛSṢsṣTṬtṭVṾvṿWẈwẉZẒzẓAẠaạEẸeẹIỊiịOỌoọƠỢơợUỤuụƯỰưựYỴyỵ"),
        ('\u0324', "UṲuṳ"),
        ('\u0325', "AḀaḁ"),
        ('\u0326', "SȘsșTȚtț"),
        ('\u0327', "CÇcçGĢgģKĶkķLĻlļNŅnņRŖrŗSŞsşTŢtţEȨeȩDḐdḑHḨhḩ"),
        ('\u0328', "AĄaąEĘeęIĮiįUŲuųOǪoǫ"),
        ('\u032D', "DḒdḓEḘeḙLḼlḽNṊnṋTṰtṱUṶuṷ"),
        ('\u032E', "HḪhḫ"),
        ('\u0330', "EḚeḛIḬiḭUṴuṵ"),
        ('\u0331', "BḆbḇDḎdḏKḴkḵLḺlḻNṈnṉRṞrṟTṮtṯZẔzẕhẖ"),
        ('\u0342', "ἀἆἁἇἈἎἉἏἠἦἡἧἨἮἩἯἰἶἱἷἸἾἹἿὐὖὑὗὙὟὠὦὡὧὨὮὩὯαᾶ¨῁ηῆ᾿῏ιῖϊῗ῾῟υῦϋῧωῶ"),
        ('\u0345',
            "ἀᾀἁᾁἂᾂἃᾃἄᾄἅᾅἆᾆἇᾇἈᾈἉᾉἊᾊἋᾋἌᾌἍᾍἎᾎἏᾏἠᾐἡᾑἢᾒἣᾓἤᾔἥᾕἦᾖἧᾗἨᾘἩᾙἪᾚἫᾛἬᾜἭᾝἮᾞἯᾟὠᾠὡᾡὢᾢὣᾣὤᾤὥᾥὦᾦὧᾧὨᾨὩᾩὪᾪὫᾫὬᾬὭᾭὮᾮὯᾯὰᾲαᾳάᾴᾶᾷΑᾼὴῂηῃήῄ" +
            "ῆῇΗῌὼῲωῳώῴῶῷΩῼ"),
    ];

    private static readonly Dictionary<(char Bare, char Mark), char> Whole = ByMark
        .SelectMany(m => m.Pairs.Chunk(2).Select(p => ((p[0], m.Mark), p[1]))).ToDictionary(p => p.Item1, p => p.Item2);

    private static readonly Dictionary<char, (char Bare, char Mark)> Parts = Whole.ToDictionary(w => w.Value, w => w.Key);

    /// <summary>The text with every letter and mark that make one character written as that one.</summary>
    public static string Of(string text)
    {
        if (!text.Any(c => c is >= FirstMark and <= LastMark))
        {
            return text;
        }

        Span<char> whole = text.Length <= 256 ? stackalloc char[text.Length] : new char[text.Length];
        int length = 0;
        foreach (char c in text)
        {
            if (length > 0 && Whole.TryGetValue((whole[length - 1], c), out char one))
            {
                whole[length - 1] = one;
            }
            else
            {
                whole[length++] = c;
            }
        }

        return new(whole[..length]);
    }

    /// <summary>The letter without its marks.</summary>
    public static char Bare(char letter)
    {
        while (Parts.TryGetValue(letter, out var parts))
        {
            letter = parts.Bare;
        }

        return letter;
    }

    private const char FirstMark = '\u0300', LastMark = '\u036F';
}
