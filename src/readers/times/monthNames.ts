/**
 * Month names by number, as dates bend them; English, Spanish, German, French, Italian, Portuguese, Dutch, Swedish, Danish,
 * Norwegian, Finnish, Polish, Czech, Hungarian, Turkish, Russian, Greek, Lithuanian, Arabic, Hebrew. Any beginning of three
 * letters and more that fits one month alone is its name, too. From memory.
 */
export const MONTH_NAMES: string[] = [
  'january enero januar janvier gennaio janeiro januari tammikuu tammikuuta tammi stycznia styczen ene genn leden ledna januar ocak oca январь января янв ιανουαριου ιανουαριος ιαν sausio sausis saus يناير ינואר ינו׳',
  'february febrero februar fevrier febbraio fevereiro februari helmikuu helmikuuta helmi lutego luty fev unor unora febr subat sub февраль февраля фев февр φεβρουαριου φεβρουαριος φεβ vasario vasaris vas فبراير פברואר פבר׳',
  'march marzo marz mars marco maart maaliskuu maaliskuuta maalis marca marzec mrt maerz mar brezen brezna bre marcius marc mart март марта μαρτιου μαρτιος μαρ kovo kovas kov مارس מרץ',
  'april abril avril aprile huhtikuu huhtikuuta huhti kwietnia kwiecien abr avr duben dubna aprilis nisan nis апрель апреля апр απριλιου απριλιος απρ balandzio balandis bal أبريل ابريل אפריל אפר׳',
  'may mayo mai maggio maio mei maj toukokuu toukokuuta touko maja mag kveten kvetna majus mayis май мая μαΐου μαϊου μαΐος μαϊος μαΐ geguzes geguze geg مايو מאי',
  'june junio juni juin giugno junho kesakuu kesakuuta kesa czerwca czerwiec giu jun cerven cervna junius haziran haz июнь июня июн ιουνιου ιουνιος ιουν birzelio birzelis birz يونيو יוני',
  'july julio juli juillet luglio julho heinakuu heinakuuta heina lipca lipiec lug juil jul cervenec cervence cvc julius temmuz tem июль июля июл ιουλιου ιουλιος ιουλ liepos liepa liep يوليو יולי',
  'august agosto aout augustus augusti elokuu elokuuta elo sierpnia sierpien ago srpen srpna augusztus agustos август августа авг αυγουστου αυγουστος αυγ rugpjucio rugpjutis rugp أغسطس אוגוסט אוג׳',
  'september septiembre septembre settembre setembro syyskuu syyskuuta syys wrzesnia wrzesien set sept zari zary zar szeptember szept eylul eyl сентябрь сентября сен сент σεπτεμβριου σεπτεμβριος σεπτ rugsejo rugsejis rugs سبتمبر ספטמבר ספט׳',
  'october octubre oktober octobre ottobre outubro lokakuu lokakuuta loka pazdziernika pazdziernik okt ott out rijen rijna oktober ekim eki октябрь октября окт οκτωβριου οκτωβριος οκτ spalio spalis spal أكتوبر אוקטובר אוק׳',
  'november noviembre novembre novembro marraskuu marraskuuta marras listopada listopad lis kasim kas ноябрь ноября ноя нояб νοεμβριου νοεμβριος νοε lapkricio lapkritis lapkr نوفمبر נובמבר נוב׳',
  'december diciembre dezember decembre dicembre dezembro joulukuu joulukuuta joulu grudnia grudzien dez dic prosinec prosince pro aralik ara декабрь декабря дек δεκεμβριου δεκεμβριος δεκ gruodzio gruodis gruod ديسمبر דצמבר דצמ׳',
];
